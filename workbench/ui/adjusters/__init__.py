"""The adjusters on screen: the list, the counting of one, springs and tyres as found."""

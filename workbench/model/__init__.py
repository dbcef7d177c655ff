"""What is true: records, units, errors. No Qt, no SQL, no clock."""

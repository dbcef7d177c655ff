"""Everything the library holds as one text in stable order, and the check that it is sound."""

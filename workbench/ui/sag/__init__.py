"""The sag sheet: both ends, and the stages of measuring one."""

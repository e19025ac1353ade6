"""What anybody may read, and job sheets."""

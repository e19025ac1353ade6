"""What is weak in a pack that loads: each module looks for one kind of weakness and returns findings."""

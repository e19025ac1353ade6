"""What the pages of every audience share: how a step is rendered and which headers guard it."""

"""The firm at its desk: the agent on the telephone, and what comes of a check."""

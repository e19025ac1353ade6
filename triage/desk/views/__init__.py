"""One page or action of the firm's desk per file."""

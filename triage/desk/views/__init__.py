"""One page or deed of the firm's desk per file."""

"""What the desk's pages show, worked out before a template sees it."""

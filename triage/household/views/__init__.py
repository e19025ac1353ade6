"""One page per file: open the visit, let a presenter make the page, render it."""

"""From a check to the facts of one page: what it shows, picked and put in words by its template."""

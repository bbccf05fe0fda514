"""Documents, pages, passages: stored, searched, cited."""

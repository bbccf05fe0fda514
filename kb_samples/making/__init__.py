"""Makes the invented literature: content by document, a layout layer per writer."""

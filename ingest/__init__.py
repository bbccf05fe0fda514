"""Files in: pages, passages and rule packs become a library."""

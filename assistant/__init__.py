"""The core: understands, decides, computes, remembers, searches."""

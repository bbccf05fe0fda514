"""Rule packs: the written decision rules, loaded and verified."""

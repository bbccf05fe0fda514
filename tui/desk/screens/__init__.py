"""The screens that open over the conversation, one file each."""

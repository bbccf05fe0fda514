"""A widget whose text is made anew for every width it is given."""

from __future__ import annotations

from textual.content import Content
from textual.geometry import Size
from textual.widget import Widget


class Reflowed(Widget, inherit_bindings=False):
    """Text that wraps by its own rules, as tall as it needs."""

    DEFAULT_CSS = "Reflowed { height: auto; }"

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:  # noqa: A002 - Textual's own word
        super().__init__(id=id, classes=classes, markup=False)
        self._made: tuple[int, Content] | None = None

    def made_for(self, width: int) -> Content:
        """Return the text for a width in cells; to be overridden."""
        raise NotImplementedError

    def remake(self, *, layout: bool = True) -> None:
        """Make the text anew; without `layout` its height is known to stay."""
        self._made = None
        if layout:
            self.clear_cached_dimensions()
        self.refresh(layout=layout)

    def at_width(self, width: int) -> Content:
        """Return the text for a width, made once."""
        if self._made is None or self._made[0] != width:
            self._made = (width, self.made_for(width))
        return self._made[1]

    def get_content_width(self, container: Size, viewport: Size) -> int:  # noqa: ARG002 - Textual's signature
        """Return the whole width there is."""
        return container.width

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:  # noqa: ARG002
        """Return the lines the text takes, wrapped again where letters are wide."""
        return (
            self.at_width(width).get_height(self.styles.get_rules(), width)
            if width
            else 0
        )

    def render(self) -> Content:
        """Return the text for the width at hand."""
        return self.at_width(self.content_size.width or self.size.width)

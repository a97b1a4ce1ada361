// A line to search in: an icon, a `placeholder`, and a cross named `clearText` that empties it.
// Emits edited() while typing and accepted() on Enter.
TextLine {
    required clearText

    glyph: "search"
}

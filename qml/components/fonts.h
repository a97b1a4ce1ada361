// The fonts that travel with the program.
#pragma once

namespace burrow {

/// Registers every bundled font with the application; call once, after QGuiApplication exists and
/// before the first text. Returns false and says which in the log when one is missing or
/// unreadable, so that the caller can refuse to go on with a face in which 0 and O look alike.
[[nodiscard]] bool loadFonts();

}  // namespace burrow

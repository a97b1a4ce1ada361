import QtQuick
import Burrow.Ports
import Burrow.ViewModels

// What every page is given: the desk with the book, the settings, the device, and the way to other
// pages. Made once, in Main.
QtObject {
    required property Desk desk
    required property Settings settings
    required property Bookcase bookcase
    required property Scanner scanner
    required property Photographer photographer
    required property Darkroom darkroom
    required property Printer printer
    required property Sharer sharer
    required property FolderShare share
    required property Reminders reminders
    required property Navigation navigation
    required property RoundModel round
}

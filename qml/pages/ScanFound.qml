import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The label of the tag that was just read.
LabelHeader {
    required property ScanModel scan

    huge: true
    punch: scan.punch
    tag: scan.tag
    cautions: scan.cautions
    binomial: scan.binomial
    about: scan.verb
    Accessible.role: Accessible.AlertMessage
    Accessible.name: scan.tag + ", " + scan.binomial + ". " + scan.verb
}

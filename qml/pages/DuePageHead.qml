import QtQuick
import Burrow.ViewModels

// The head of the due list.
PageHead {
    id: head

    required property Kit kit
    required property DueModel due

    title: qsTr("Due today")
    sub: head.due.summary
    trouble: head.kit.desk.trouble
    demo: head.kit.desk.demo
    onDismissed: head.kit.desk.dismissTrouble()
}

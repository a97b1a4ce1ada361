import QtQuick

// A place that is made when it is first looked at, and kept.
Loader {
    id: loader

    required property Kit kit
    required property string file
    required property bool wanted

    onWantedChanged: loader.make()
    Component.onCompleted: loader.make()

    function make() {
        if (loader.wanted && loader.status === Loader.Null)
            loader.setSource(Qt.resolvedUrl(loader.file + ".qml"), {
                "kit": loader.kit
            });
    }
}

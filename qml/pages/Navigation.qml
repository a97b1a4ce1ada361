import QtQuick

// The way from page to page. Pages ask; Main goes.
QtObject {
    // A page by the name of its file, with what it needs besides the kit.
    signal pushed(string page, var properties)
    // Instead of the page that is shown.
    signal replaced(string page, var properties)
    signal backed
    // Back to one of the four places.
    signal homed(int place)

    function animal(subject: string) {
        pushed("AnimalPage", {
            "subject": subject
        });
    }
    function scan() {
        pushed("ScanPage", {});
    }
    function round() {
        pushed("RoundPage", {});
    }
    function moult(subject: string) {
        pushed("MoultPage", {
            "subject": subject
        });
    }
    function log(subject: string) {
        pushed("LogPage", {
            "subject": subject
        });
    }
}

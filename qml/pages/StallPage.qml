import QtQuick

// The place for stock and sales, which this version does not keep yet.
ComingPage {
    title: qsTr("Stall")
    sentence: qsTr("Stock and prices are not kept here yet")
    detail: qsTr("A later version keeps what is for sale, prices and the day's takings. What works now at a fair, with no signal: scan a tag, hand over a care sheet, and log an animal as sold or given from its page.")
}

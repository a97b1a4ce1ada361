// Reads a calendar with ical.js and holds it against what it should say: read_calendar.mjs FILE.ics FILE.json
import ICAL from "ical.js";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";

const bytes = readFileSync(process.argv[2]);
const expected = JSON.parse(readFileSync(process.argv[3], "utf8"));

for (const line of bytes.toString("latin1").split("\r\n")) {
    assert.ok(line.length <= 75, `a line of ${line.length} octets`);
    assert.ok(!/[\r\n]/.test(line), "a line end that is no CRLF");
    // Each physical line is well-formed UTF-8 by itself: no character is cut apart.
    new TextDecoder("utf-8", { fatal: true }).decode(Buffer.from(line, "latin1"));
}
const calendar = new ICAL.Component(ICAL.parse(bytes.toString("utf8")));
// What ical.js does not know it leaves as it is written: RFC 5545, 3.8.8.2 makes it a text.
const name = calendar.getFirstPropertyValue("x-wr-calname");
assert.equal(ICAL.design.icalendar.value.text.fromICAL(name, "x-wr-calname"), expected.name);
assert.equal(calendar.getFirstPropertyValue("version"), "2.0");
const events = calendar.getAllSubcomponents("vevent");
assert.equal(events.length, expected.events.length);
events.forEach((component, i) => {
    const event = new ICAL.Event(component);
    const want = expected.events[i];
    assert.equal(event.uid, want.uid);
    assert.equal(event.summary, want.summary);
    assert.equal(event.description ?? "", want.description);
    assert.equal(event.location, want.location);
    assert.equal(component.getFirstPropertyValue("categories"), want.category);
    assert.ok(event.startDate.isDate && event.endDate.isDate);
    assert.equal(event.startDate.toString(), want.first);
    assert.equal(event.endDate.toString(), want.after);
    assert.equal(component.getFirstPropertyValue("dtstamp").toString(), "2026-05-08T19:14:00Z");
});
console.log(`ical.js ${events.length} events read as written`);

import QtQuick
import QtTest
import Burrow.Components

Item {
    id: scene
    width: 360
    height: 400

    BalanceLine {
        id: line
        width: 344
        before: 0.5
        after: 1
        low: "male"
        middle: "even"
        high: "female"
        description: "97 in 100"
    }
    Drawing {
        id: drawing
        y: 100
        width: 200
        name: "plate"
        description: "A flap and two pouches"
    }

    TestCase {
        name: "Balance"
        when: windowShown

        function test_both_ends_are_within() {
            compare(line.xOf(0), line.inset);
            compare(line.xOf(1), line.width - line.inset);
            compare(line.xOf(0.5), line.width / 2);
            // What cannot be stays at its end.
            compare(line.xOf(-1), line.inset);
            compare(line.xOf(2), line.width - line.inset);
        }
        function test_it_is_said() {
            compare(line.Accessible.name, "97 in 100");
            compare(drawing.Accessible.name, "A flap and two pouches");
        }
        function test_a_drawing_keeps_its_shape() {
            verify(Math.abs(drawing.ratio - 204 / 400) < 1e-9);
            compare(drawing.height, Math.round(200 * 204 / 400));
        }
    }
}

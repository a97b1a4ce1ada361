#!/usr/bin/env python3
"""Homographies, a lens and local contrast by OpenCV beside ours, and photos of the printed mat.

measure_mat.py numbers FILE            points of ours in FILE (JSON), as OpenCV has them
measure_mat.py photos BURROW FOLDER N  prints the mat, photographs it N times with OpenCV, measures

Both print what differs and end with status 1 where it differs too much.
"""
import json
import subprocess
import sys

import cv2
import numpy as np


def numbers(path):
    with open(path, encoding="utf-8") as file:
        ours = json.load(file)
    bad = 0

    def check(what, difference, tolerance):
        nonlocal bad
        print(f"{what}: {difference:.3g} (at most {tolerance:g})")
        bad += not difference <= tolerance

    source = np.float64(ours["from"])
    target = np.float64(ours["to"])
    matrix, _ = cv2.findHomography(source, target, 0)
    theirs = cv2.perspectiveTransform(source.reshape(-1, 1, 2), matrix).reshape(-1, 2)
    check("homography, points", np.abs(theirs - np.float64(ours["mapped"])).max(), 1e-6)
    check("homography, sum of squares", abs(((theirs - target) ** 2).sum() - ours["squares"]), 1e-6)

    # Brown's k1 with the focal length as the unit: ours has half the diagonal.
    r, (cx, cy) = ours["radius"], ours["centre"]
    camera = np.float64([[r, 0, cx], [0, r, cy], [0, 0, 1]])
    lens = np.float64([ours["k"], 0, 0, 0])
    criteria = (cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 200, 1e-14)
    seen = np.float64(ours["seen"]).reshape(-1, 1, 2)
    straight = cv2.undistortPointsIter(seen, camera, lens, None, camera, criteria).reshape(-1, 2)
    check("undistortion", np.abs(straight - np.float64(ours["straight"])).max(), 1e-6)

    for each in ours["contrast"]:
        grey = np.uint8(each["grey"]).reshape(each["height"], each["width"])
        tiles = (each["columns"], each["rows"])
        theirs = cv2.createCLAHE(clipLimit=each["clip"], tileGridSize=tiles).apply(grey)
        out = np.int32(each["out"]).reshape(grey.shape)
        check(f"contrast {grey.shape} {tiles}", np.abs(theirs - out).max(), 0)
    return 1 if bad else 0


PER_MM = 600 / 25.4


def dotted(point):
    """A point of the sheet in mm, as drawing functions count: from the middle of the first dot."""
    return np.float64(point) * PER_MM - 0.5


def draw_moult(sheet, rng):
    """Draws a carapace of 15 mm and eight legs into the place for the moult; its two ends, in mm."""
    middle = np.float64([74, 98]) + rng.uniform(-25, 25, 2)
    angle = rng.uniform(0, 2 * np.pi)
    along = np.float64([np.cos(angle), np.sin(angle)])
    across = np.float64([-along[1], along[0]])

    def fixed(values):
        return tuple(int(round(value * 1024)) for value in values)

    for leg in (-4.5, -1.5, 1.5, 4.5):
        for side in (-1, 1):
            near = middle + leg * along + side * 4 * across
            far = middle + 1.8 * leg * along + side * 24 * across
            cv2.line(sheet, fixed(dotted(near)), fixed(dotted(far)), 140, int(1.4 * PER_MM),
                     cv2.LINE_AA, 10)
    cv2.ellipse(sheet, fixed(dotted(middle)), fixed(np.float64([7.5, 6]) * PER_MM),
                np.degrees(angle), 0, 360, 120, cv2.FILLED, cv2.LINE_AA, 10)
    return middle - 7.5 * along, middle + 7.5 * along


def random_shot(rng, number):
    """How the photo of this number is taken."""
    sizes = [12, 2, 5, 24, 12, rng.uniform(2, 24)]
    megapixels = sizes[number % len(sizes)]
    quarter = int(rng.integers(4))
    # Half of those of 12 Mpx are held nearly level: of them the error is asked.
    steepest = 20 if number % 12 in (0, 4) else 35
    return {
        "long": int(round(np.sqrt(megapixels * 1e6 * 4 / 3))),
        "megapixels": megapixels,
        "portrait": quarter % 2 == 0,
        "tilt": rng.uniform(0, steepest),
        "azimuth": rng.uniform(0, 2 * np.pi),
        "roll": 90 * quarter + rng.uniform(-8, 8),
        "fill": rng.uniform(0.85, 0.98),
        # By how much the corners come nearer to the lens's centre, and how much of that is the second
        # term's. Straight lines along the edges bend by a third of the first, up to one percent.
        "barrel": rng.uniform(0, 0.03),
        "second": rng.uniform(-0.3, 0.3),
        "beside": rng.uniform(-0.005, 0.005, 2),
        "blur": rng.uniform(0.4, 1.5),
        "noise": rng.uniform(2, 4),
        "quality": int(rng.integers(70, 96)),
        "uneven": rng.uniform(0.1, 0.5),
        "light": rng.uniform(0, 2 * np.pi),
        "shade": rng.uniform(0, 2 * np.pi) if rng.integers(2) else None,
    }


class Camera:
    """A camera of OpenCV's model, so far away that the whole sheet shows."""

    def __init__(self, shot, mm_w, mm_h):
        short = shot["long"] * 3 // 4
        self.width, self.height = short, shot["long"]
        if not shot["portrait"]:
            self.width, self.height = self.height, self.width
        focal = 26 / 36 * shot["long"]
        corner = np.hypot(self.width, self.height) / 2 / focal
        k1 = -shot["barrel"] * (1 - shot["second"]) / corner**2
        k2 = -shot["barrel"] * shot["second"] / corner**4
        size = np.float64([self.width, self.height])
        cx, cy = size / 2 + shot["beside"] * self.width
        self.matrix = np.float64([[focal, 0, cx], [0, focal, cy], [0, 0, 1]])
        self.lens = np.float64([k1, k2, 0, 0])
        axis = np.float64([np.cos(shot["azimuth"]), np.sin(shot["azimuth"]), 0])
        turn, _ = cv2.Rodrigues(axis * np.radians(shot["tilt"]))
        roll, _ = cv2.Rodrigues(np.float64([0, 0, np.radians(shot["roll"])]))
        self.rotation = roll @ turn
        outline = [[x, y] for x in np.linspace(0, mm_w, 9) for y in np.linspace(0, mm_h, 9)]
        near, far = 100.0, 2000.0
        while far - near > 0.01:
            away = (near + far) / 2
            self.move = [0, 0, away] - self.rotation @ np.float64([mm_w / 2, mm_h / 2, 0])
            inside = np.abs(self.seen(outline) - size / 2) <= shot["fill"] * size / 2
            near, far = (near, away) if inside.all() else (away, far)
        self.move = [0, 0, far] - self.rotation @ np.float64([mm_w / 2, mm_h / 2, 0])

    def seen(self, points):
        """Where points of the sheet, in mm, lie in the photo, from its corner."""
        solid = np.float64([[x, y, 0] for x, y in points])
        turned, _ = cv2.Rodrigues(self.rotation)
        at, _ = cv2.projectPoints(solid, turned, self.move, self.matrix, self.lens)
        return at.reshape(-1, 2)

    def dots(self):
        """For each pixel the dot of the sheet that it shows, reckoned on a net of every eighth."""
        net = 8
        x, y = np.meshgrid(np.arange(0, self.width + 2 * net, net) + 0.5,
                           np.arange(0, self.height + 2 * net, net) + 0.5)
        pixels = np.stack([x, y], axis=-1).reshape(-1, 1, 2)
        criteria = (cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 100, 1e-12)
        straight = cv2.undistortPointsIter(pixels, self.matrix, self.lens, None, None, criteria)
        plane = np.column_stack([self.rotation[:, 0], self.rotation[:, 1], self.move])
        dots = dotted(cv2.perspectiveTransform(straight, np.linalg.inv(plane)))
        between = np.float64([[1 / net, 0, 0], [0, 1 / net, 0]])
        return [cv2.warpAffine(np.float32(dots[:, 0, i].reshape(x.shape)), between,
                               (self.width, self.height),
                               flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP) for i in (0, 1)]


def photograph(sheet, camera, shot, rng):
    """Light is reckoned as it is (IEC 61966-2-1, sRGB), and coded last."""
    value = np.arange(256) / 255
    linear = np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)
    # Printed paper sends back four fifths of the light, ink a twentieth.
    light = np.float32(0.05 + 0.75 * linear)[sheet]
    x, y = camera.seen([[74, 98], [75, 98]])
    fine = 0.45 * PER_MM / np.hypot(*(y - x))
    light = cv2.GaussianBlur(light, (0, 0), max(0.2, fine))
    across, down = camera.dots()
    photo = cv2.remap(light, across, down, cv2.INTER_LINEAR, borderValue=0.1)
    u = np.float32(np.arange(camera.width) / camera.width - 0.5)[None, :]
    v = np.float32(np.arange(camera.height) / camera.height - 0.5)[:, None]
    photo *= 1 + np.float32(shot["uneven"]) * (u * np.cos(shot["light"]) + v * np.sin(shot["light"]))
    if shot["shade"] is not None:
        edge = u * np.cos(shot["shade"]) + v * np.sin(shot["shade"])
        photo[edge > rng.uniform(-0.1, 0.3)] *= 0.4
    photo = cv2.GaussianBlur(photo, (0, 0), shot["blur"])
    steps = np.linspace(0, 1, 4096)
    coded = np.where(steps <= 0.0031308, 12.92 * steps, 1.055 * steps ** (1 / 2.4) - 0.055)
    photo = np.float32(255 * coded)[np.uint16(np.clip(photo, 0, 1) * 4095)]
    photo += np.float32(shot["noise"]) * rng.standard_normal(photo.shape, np.float32)
    return cv2.merge([np.uint8(np.clip(photo + 0.5, 0, 255))] * 3)


def measured(burrow, path, ends):
    """What `burrow measure` says, or why it does not."""
    a, b = (f"{x:.3f},{y:.3f}" for x, y in ends)
    run = subprocess.run([burrow, "measure", path, "--from", a, "--to", b, "--json"],
                         capture_output=True, text=True, check=False)
    if run.returncode == 0:
        return json.loads(run.stdout), None
    # A sentence and status 1 is a refusal; anything else is a fault.
    if run.returncode != 1 or not run.stderr.strip():
        raise RuntimeError(f"status {run.returncode}: {run.stderr}")
    return None, run.stderr.strip()


def photos(burrow, folder, count):
    rng = np.random.default_rng(4)
    subprocess.run([burrow, "mat", "--out", f"{folder}/mat.pdf", "--paper", "a5", "--name", "7Q2M"],
                   check=True, stdout=subprocess.DEVNULL)
    subprocess.run(["pdftoppm", "-gray", "-r", "600", "-singlefile", f"{folder}/mat.pdf",
                    f"{folder}/mat"], check=True)
    printed = cv2.imread(f"{folder}/mat.pgm", cv2.IMREAD_GRAYSCALE)
    mm_h, mm_w = (side / PER_MM for side in printed.shape)
    errors, level, held, far_off = [], [], 0, 0
    tried, refused = {"large": 0, "small": 0}, {"large": 0, "small": 0}
    for i in range(count):
        shot = random_shot(rng, i)
        sheet = printed.copy()
        ends = draw_moult(sheet, rng)
        camera = Camera(shot, mm_w, mm_h)
        path = f"{folder}/photo.jpg"
        cv2.imwrite(path, photograph(sheet, camera, shot, rng),
                    [cv2.IMWRITE_JPEG_QUALITY, shot["quality"]])
        # Clicks are off by half a pixel, as is said of them.
        answer, reason = measured(burrow, path, camera.seen(ends) + rng.normal(0, 0.5, (2, 2)))
        size = "large" if shot["megapixels"] > 3 else "small"
        tried[size] += 1
        if answer is None:
            refused[size] += 1
            print(f"refused, {shot['megapixels']:.1f} Mpx, tilt {shot['tilt']:.0f}, "
                  f"blur {shot['blur']:.1f}: {reason}")
            continue
        low, high = answer["interval95"]
        errors.append(abs(answer["mm"] - 15))
        held += low <= 15 <= high
        far_off += errors[-1] > 1.5 * (high - low)
        if shot["megapixels"] == 12 and shot["tilt"] <= 20:
            level.append(errors[-1])
    near = np.percentile(level, 95) if level else np.inf
    print(f"15 mm in {count} photos: within {near:.3f} mm in the {len(level)} of 12 Mpx held level, "
          f"{np.percentile(errors, 95):.3f} mm in all (95 %); interval holds in {held} of "
          f"{len(errors)}, {far_off} far off; refused {refused['large']} of {tried['large']} above "
          f"3 Mpx, {refused['small']} of {tried['small']} below")
    # 93 to 97 percent, and three standard deviations of what chance does to so many photos.
    chance = 3 * np.sqrt(0.95 * 0.05 / len(errors))
    share = held / len(errors)
    good = near <= 0.15 and far_off == 0
    good &= max(0.8, 0.93 - chance) <= share <= 0.97 + chance
    good &= refused["large"] <= 0.05 * tried["large"]
    # Below 3 Mpx some squares cannot be read where the blur is strong; of few photos this says nothing.
    good &= tried["small"] < 10 or refused["small"] <= 0.2 * tried["small"]
    return 0 if good else 1


if __name__ == "__main__":
    if sys.argv[1] == "numbers":
        sys.exit(numbers(sys.argv[2]))
    sys.exit(photos(sys.argv[2], sys.argv[3], int(sys.argv[4])))

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


def photograph(sheet, per_mm, rng, tilt):
    """A photo, and where a point of the sheet in mm lies in it."""
    height, width = 4000, 3000
    focal = 26 / 36 * height
    mm_h, mm_w = sheet.shape[0] / per_mm, sheet.shape[1] / per_mm
    axis = rng.uniform(0, 2 * np.pi)
    turn, _ = cv2.Rodrigues(np.float64([np.cos(axis), np.sin(axis), 0]) * np.radians(tilt))
    roll, _ = cv2.Rodrigues(np.float64([0, 0, np.radians(rng.uniform(-8, 8))]))
    rotation = roll @ turn
    camera = np.float64([[focal, 0, width / 2], [0, focal, height / 2], [0, 0, 1]])
    corners = np.float64([[0, 0, 0], [mm_w, 0, 0], [mm_w, mm_h, 0], [0, mm_h, 0]])
    for away in np.arange(150, 900, 2.0):
        move = -rotation @ np.float64([mm_w / 2, mm_h / 2, 0]) + [0, 0, away]
        at = (camera @ (rotation @ corners.T + move[:, None])).T
        at = at[:, :2] / at[:, 2:]
        if (at > 0).all() and (at[:, 0] < width).all() and (at[:, 1] < height).all():
            break
    plane = camera @ np.column_stack([rotation[:, 0], rotation[:, 1], move])
    # warpPerspective counts from the middle of the first pixel, the sheet from its corner.
    dots = np.float64([[1 / per_mm, 0, 0.5 / per_mm], [0, 1 / per_mm, 0.5 / per_mm], [0, 0, 1]])
    shift = np.float64([[1, 0, -0.5], [0, 1, -0.5], [0, 0, 1]])
    fine = cv2.GaussianBlur(sheet, (0, 0), 0.45 * per_mm / (height / mm_h))
    photo = cv2.warpPerspective(fine, shift @ plane @ dots, (width, height), flags=cv2.INTER_LINEAR,
                                borderValue=90).astype(np.float64)
    light = 1 + 0.3 * (np.mgrid[0:height, 0:width][int(rng.integers(2))] / height - 0.5)
    photo = cv2.GaussianBlur(photo * light * 0.85, (0, 0), rng.uniform(0.4, 1.5))
    photo = np.clip(photo + rng.normal(0, 3, photo.shape), 0, 255).astype(np.uint8)

    def where(point):
        x, y, w = plane @ [*point, 1]
        return x / w, y / w

    return cv2.merge([photo] * 3), where


def photos(burrow, folder, count):
    rng = np.random.default_rng(4)
    subprocess.run([burrow, "mat", "--out", f"{folder}/mat.pdf", "--paper", "a5", "--name", "7Q2M"],
                   check=True, stdout=subprocess.DEVNULL)
    subprocess.run(["pdftoppm", "-gray", "-r", "600", "-singlefile", f"{folder}/mat.pdf",
                    f"{folder}/mat"], check=True)
    sheet = cv2.imread(f"{folder}/mat.pgm", cv2.IMREAD_GRAYSCALE)
    errors, held = [], 0
    for i in range(count):
        photo, where = photograph(sheet, 600 / 25.4, rng, rng.uniform(0, 35))
        path = f"{folder}/photo.jpg"
        cv2.imwrite(path, photo, [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(70, 96))])
        middle = np.float64([74, 98]) + rng.uniform(-40, 40, 2)
        angle = rng.uniform(0, 2 * np.pi)
        half = 7.5 * np.float64([np.cos(angle), np.sin(angle)])
        a, b = (np.float64(where(middle + s * half)) + rng.normal(0, 0.5, 2) for s in (-1, 1))
        run = subprocess.run([burrow, "measure", path, "--from", f"{a[0]:.3f},{a[1]:.3f}",
                              "--to", f"{b[0]:.3f},{b[1]:.3f}", "--json"],
                             capture_output=True, text=True, check=False)
        if run.returncode != 0:
            print(run.stderr)
            return 1
        answer = json.loads(run.stdout)
        errors.append(abs(answer["mm"] - 15))
        held += answer["interval95"][0] <= 15 <= answer["interval95"][1]
    print(f"15 mm in {count} photos: within {np.percentile(errors, 95):.3f} mm (95 %), "
          f"interval holds in {held}")
    return 0 if np.percentile(errors, 95) <= 0.15 and held >= 0.8 * count else 1


if __name__ == "__main__":
    if sys.argv[1] == "numbers":
        sys.exit(numbers(sys.argv[2]))
    sys.exit(photos(sys.argv[2], sys.argv[3], int(sys.argv[4])))

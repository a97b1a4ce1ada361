#!/usr/bin/env python3
"""Three devices, a shared folder on each, and syncthing in between. See tests/run-sync."""
import argparse
import copy
import hashlib
import json
import os
import random
import shutil
import sqlite3
import struct
import subprocess
import sys
import tempfile
import threading
import time
import urllib.error
import urllib.request
import xml.etree.ElementTree as ET
import zlib

NAMES = ("phone", "tablet", "laptop")


def port(kind, index):
    return {"gui": 18384, "data": 22001}[kind] + index


class Engine:
    """One syncthing: it talks to the other two over loopback and to nobody else."""

    def __init__(self, root, index):
        self.index = index
        self.home = os.path.join(root, NAMES[index], "engine")
        self.folder = os.path.join(root, NAMES[index], "shared")
        os.makedirs(self.folder)
        self.key = f"key-of-{NAMES[index]}"
        self.process = None
        subprocess.run(["syncthing", "generate", "--no-default-folder", "--home", self.home],
                       check=True, capture_output=True)
        self.id = subprocess.run(["syncthing", "--home", self.home, "--device-id"], check=True,
                                 capture_output=True, text=True).stdout.strip()

    def configure(self, engines):
        path = os.path.join(self.home, "config.xml")
        tree = ET.parse(path)
        root = tree.getroot()
        gui = root.find("gui")
        gui.find("address").text = f"127.0.0.1:{port('gui', self.index)}"
        gui.find("apikey").text = self.key
        options = root.find("options")
        for name, value in {
                "listenAddress": f"tcp://127.0.0.1:{port('data', self.index)}",
                "globalAnnounceEnabled": "false", "localAnnounceEnabled": "false",
                "relaysEnabled": "false", "natEnabled": "false", "urAccepted": "-1",
                "crashReportingEnabled": "false", "autoUpgradeIntervalH": "0", "startBrowser": "false",
                "reconnectionIntervalS": "1", "stunKeepaliveStartS": "0",
                "announceLANAddresses": "false"}.items():
            for old in options.findall(name):
                options.remove(old)
            ET.SubElement(options, name).text = value
        # A folder made from the defaults keeps conflict copies; one written by hand would not.
        folder = copy.deepcopy(root.find("defaults/folder"))
        for old in folder.findall("device"):
            folder.remove(old)
        for name, value in {"id": "shared", "label": "shared", "path": self.folder,
                            "rescanIntervalS": "5", "fsWatcherDelayS": "1"}.items():
            folder.set(name, value)
        for other in engines:
            if other is not self:
                device = ET.SubElement(root, "device", id=other.id, name=NAMES[other.index])
                ET.SubElement(device, "address").text = f"tcp://127.0.0.1:{port('data', other.index)}"
            ET.SubElement(folder, "device", id=other.id)
        root.append(folder)
        tree.write(path)

    def start(self):
        log = open(os.path.join(self.home, "log.txt"), "ab")
        self.process = subprocess.Popen(
            ["syncthing", "serve", "--home", self.home, "--no-browser", "--no-upgrade", "--no-restart"],
            stdout=log, stderr=log, env={**os.environ, "STNOUPGRADE": "1"})

    def call(self, path, method="GET"):
        request = urllib.request.Request(f"http://127.0.0.1:{port('gui', self.index)}{path}",
                                         method=method, headers={"X-API-Key": self.key})
        with urllib.request.urlopen(request, timeout=30) as answer:
            text = answer.read()
        return json.loads(text) if text else None

    def is_up(self):
        try:
            self.call("/rest/system/ping")
            return True
        except (urllib.error.URLError, ConnectionError, TimeoutError):
            return False

    def set_online(self, online):
        self.call("/rest/system/" + ("resume" if online else "pause"), "POST")

    def rescan(self):
        self.call("/rest/db/scan?folder=shared", "POST")

    def stop(self):
        if self.process is not None:
            self.process.terminate()
            self.process.wait(30)


def wait_for(what, seconds=60):
    end = time.time() + seconds
    while time.time() < end:
        if what():
            return
        time.sleep(0.1)
    raise SystemExit(f"waited {seconds} s in vain")


def tree(folder):
    """Every file by its hash; what the engine keeps for itself begins with a dot or a tilde."""
    found = {}
    for base, folders, files in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in files:
            if name.startswith((".", "~")):
                continue
            path = os.path.join(base, name)
            try:
                with open(path, "rb") as file:
                    digest = hashlib.sha256(file.read()).hexdigest()
            except FileNotFoundError:
                digest = "gone"
            found[os.path.relpath(path, folder)] = digest
    return found


def png(random_bytes, side=24):
    """A picture of noise: no two are the same."""
    rows = b"".join(b"\0" + random_bytes(side * 3) for _ in range(side))

    def chunk(kind, data):
        body = kind + data
        return struct.pack(">I", len(data)) + body + struct.pack(">I", zlib.crc32(body))

    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0)) +
            chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b""))


class Device:
    def __init__(self, arguments, root, engine, seed):
        self.burrow = arguments.burrow
        self.dumper = arguments.dump
        self.engine = engine
        self.name = NAMES[engine.index]
        self.book = os.path.join(root, self.name, "kiln-row.book")
        self.photo = os.path.join(root, self.name, "photo.png")
        self.random = random.Random(seed)
        self.lock = threading.Lock()
        self.edits = 0
        self.visits = 0

    def run(self, *words, may_fail=False):
        done = subprocess.run([self.burrow, *words], capture_output=True, text=True,
                              env={**os.environ, "QT_QPA_PLATFORM": "offscreen"})
        if done.returncode != 0 and not may_fail:
            raise RuntimeError(f"{self.name}: burrow {' '.join(words)}: {done.stderr}")
        return done

    def visit(self):
        with self.lock:
            self.visits += 1
            done = self.run("share", self.book, self.engine.folder, "--json", "--confidential")
            return json.loads(done.stdout)

    def edit(self, animals):
        r = self.random
        animal = r.choice(animals)
        choice = r.randrange(10)
        with self.lock:
            self.edits += 1
            if choice < 5:
                self.run("log", self.book, animal, "offered", "prey=cricket",
                         f"prey_mm={r.randrange(2, 25)}", f"outcome={r.choice(['ate', 'refused'])}")
            elif choice < 6:
                self.run("log", self.book, animal, "moved", f"place={r.choice('ABC')}/{r.randrange(9)}")
            elif choice < 7:
                self.run("log", self.book, animal, "note",
                         f"text={self.name} {self.edits} \u202e<b>'; --")
            elif choice < 8:
                with open(self.photo, "wb") as file:
                    file.write(png(r.randbytes))
                self.run("log", self.book, animal, "photo", f"file={self.photo}", "role=animal")
            elif choice < 9:
                self.run("undo", self.book, may_fail=True)  # there may be nothing of its own left
            else:
                self.run("rules", self.book, "feed.interval.adult", f"{r.randrange(5, 9)}-{r.randrange(9, 15)}")

    def dump(self):
        return subprocess.run([self.dumper, self.book], check=True, capture_output=True).stdout

    def missing_photos(self):
        """Those that the book shows and this device does not hold. A photo that was undone before anyone
        else saw it stays where it was taken."""
        book = sqlite3.connect(f"file:{self.book}?mode=ro", uri=True)
        shown = {row[0] for row in book.execute(
            "SELECT json_extract(body, '$.picture') FROM fact WHERE kind = 'photo'")}
        book.close()
        folder = self.book + "-photos/pictures"
        held = {name.split(".")[0] for name in os.listdir(folder)} if os.path.isdir(folder) else set()
        return shown - held, len(shown)


def set_up(arguments, root):
    engines = [Engine(root, index) for index in range(3)]
    for engine in engines:
        engine.configure(engines)
        engine.start()
    wait_for(lambda: all(engine.is_up() for engine in engines))
    devices = [Device(arguments, root, engine, arguments.seed * 3 + engine.index) for engine in engines]
    first = devices[0]
    first.run("demo", first.book, "--animals", "24", "--years", "1", "--seed", "5")
    bundle = os.path.join(root, "join.burrow")
    first.run("export", first.book, bundle, "--confidential")
    for other in devices[1:]:
        other.run("join", other.book, bundle)
    return engines, devices


def work(device, animals, edits, failures):
    """What one keeper does: log, and let the app look at the folder now and then."""
    try:
        for _ in range(edits):
            device.edit(animals)
            if device.random.random() < 0.4:
                device.visit()
            time.sleep(device.random.random() * 0.2)
        device.visit()
    except Exception as trouble:  # shown by the main thread, which ends the run
        failures.append(trouble)


def play(engines, devices, rounds, animals):
    failures = []
    for number in range(rounds):
        offline = number % 4  # each in turn, and sometimes nobody
        if offline < 3:
            engines[offline].set_online(False)
        threads = [threading.Thread(target=work, args=(device, animals, 4, failures))
                   for device in devices]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        if offline < 3:
            engines[offline].set_online(True)
        if failures:
            raise failures[0]


def settle(engines, devices):
    """Visits until nothing moves any more; gives the number of passes."""
    for passes in range(1, 40):
        for engine in engines:
            engine.rescan()
        wait_for(lambda: tree(engines[0].folder) == tree(engines[1].folder) == tree(engines[2].folder), 120)
        before = tree(engines[0].folder)
        reports = [device.visit() for device in devices]
        quiet = all(not report["added"] and not report["files_taken"] and not report["waiting"] and
                    not report["photos_added"] for report in reports)
        if quiet and all(tree(engine.folder) == before for engine in engines):
            return passes
    raise SystemExit("it never came to rest")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--burrow", required=True)
    parser.add_argument("--dump", required=True)
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    arguments.burrow = os.path.abspath(arguments.burrow)
    arguments.dump = os.path.abspath(arguments.dump)
    root = tempfile.mkdtemp(prefix="burrow-sync-")
    engines = []
    started = time.time()
    try:
        engines, devices = set_up(arguments, root)
        listed = json.loads(devices[0].run("due", devices[0].book, "--json").stdout)
        animals = sorted({line["code"] for line in listed})[:12]
        play(engines, devices, arguments.rounds, animals)
        passes = settle(engines, devices)
        dumps = [device.dump() for device in devices]
        conflicts = [name for name in tree(engines[0].folder) if "sync-conflict" in name]
        if not dumps[0] == dumps[1] == dumps[2]:
            for device, dump in zip(devices, dumps):
                with open(os.path.join(tempfile.gettempdir(), f"dump-{device.name}.txt"), "wb") as file:
                    file.write(dump)
            sys.exit("the books differ: see dump-*.txt beside the other temporary files")
        for device in devices:
            missing, shown = device.missing_photos()
            if missing:
                sys.exit(f"{device.name} lacks {len(missing)} of {shown} photos")
        if conflicts:
            sys.exit(f"the engine had to make conflict copies: {conflicts}")
        for device in devices:
            device.run("check", device.book)
        print(f"seed {arguments.seed}, {arguments.rounds} rounds, "
              f"{sum(device.edits for device in devices)} edits, "
              f"{sum(device.visits for device in devices)} visits, {shown} photos, "
              f"{len(tree(engines[0].folder))} files in the folder: three equal books of "
              f"{dumps[0].count(bytes([10]))} lines after {passes} passes, {time.time() - started:.0f} s")
    finally:
        for engine in engines:
            engine.stop()
        shutil.rmtree(root, ignore_errors=True)


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Opens a bundle as core/exchange/FORMAT.md describes it, without anything of Burrowbook's.

usage: open_bundle.py FILE [PASSPHRASE]

Python's own zipfile and json, and for a sealed file PyNaCl's bindings of libsodium. Prints the entries
with their facts as JSON; anything that is not as described ends it with status 1.
"""
import hashlib
import io
import json
import struct
import sys
import uuid
import zipfile


def unsealed(data, passphrase):
    from nacl import bindings as sodium
    from nacl.pwhash import argon2id

    assert data[8] == 1 and data[9] == 1 and data[10:12] == b"\0\0"
    passes, memory = struct.unpack_from("<II", data, 12)
    key = argon2id.kdf(32, passphrase.encode(), data[20:36], opslimit=passes, memlimit=memory * 1024)
    state = sodium.crypto_secretstream_xchacha20poly1305_state()
    sodium.crypto_secretstream_xchacha20poly1305_init_pull(state, data[36:60], key)
    out = b""
    at, bound = 60, data[:60]
    while True:
        plain, tag = sodium.crypto_secretstream_xchacha20poly1305_pull(
            state, data[at : at + 65553], bound)
        out += plain
        at, bound = at + 65553, None
        if tag == sodium.crypto_secretstream_xchacha20poly1305_TAG_FINAL:
            assert at >= len(data), "something follows the last chunk"
            return out
        assert tag == sodium.crypto_secretstream_xchacha20poly1305_TAG_MESSAGE


def digest(ids):
    joined = 0
    for each in ids:
        joined ^= uuid.UUID(each).int
    return str(uuid.UUID(int=joined))


def check_zip(bundle):
    """ISO/IEC 21320-1: stored or deflated, nothing encrypted, one volume."""
    names = bundle.namelist()
    assert len(names) == len(set(names))
    for item in bundle.infolist():
        assert item.compress_type in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED), item
        assert item.flag_bits & 0x2041 == 0, item  # encryption in its three forms
        assert item.extract_version <= 45 and item.volume == 0, item
        assert item.external_attr >> 28 == 0o10, item  # a plain file
    assert bundle.testzip() is None
    return names


def main():
    data = open(sys.argv[1], "rb").read()
    if data[:8] == b"BRBKSEAL":
        data = unsealed(data, sys.argv[2])
    bundle = zipfile.ZipFile(io.BytesIO(data))
    names = check_zip(bundle)
    manifest = json.loads(bundle.read("manifest.json"))
    assert manifest["format"] == "burrow bundle" and manifest["version"] == 1
    raw = bundle.read("entries.jsonl")
    counted = manifest["entries"]
    assert len(raw) == counted["bytes"] and hashlib.sha256(raw).hexdigest() == counted["sha256"]
    assert raw == b"" or raw.endswith(b"\n")
    lines = raw.decode("utf-8").splitlines() if raw else []
    entries = [json.loads(line) for line in raw.decode("utf-8").split("\n")[:-1]]
    assert len(entries) == counted["count"] and len(lines) >= len(entries)
    keys = "act body day device happened_at hlc id kind recorded_at seq thing zone".split()
    authors = {}
    for entry, line in zip(entries, raw.split(b"\n")):
        assert list(entry) == keys, entry
        assert json.dumps(entry, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode() == line
        authors.setdefault(entry["device"], []).append(entry)
    assert set(authors) == set(counted["authors"])
    for device, own in authors.items():
        said = counted["authors"][device]
        seqs = [entry["seq"] for entry in own]
        assert (said["first"], said["last"], said["count"]) == (min(seqs), max(seqs), len(own))
        assert said["digest"] == digest(entry["id"] for entry in own)
    photos = manifest["photos"]
    expected = {"manifest.json", "entries.jsonl"}
    for picture, size in photos["full"].items():
        name = f"photos/{picture}.jpg"
        expected.add(name)
        content = bundle.read(name)
        assert len(content) == size and hashlib.sha256(content).hexdigest() == picture
        assert content[:2] == b"\xff\xd8"
    for picture, said in photos["reduced"].items():
        name = f"reduced/{picture}.jpg"
        expected.add(name)
        content = bundle.read(name)
        assert len(content) == said["bytes"] and hashlib.sha256(content).hexdigest() == said["sha256"]
    assert set(names) == expected
    print(json.dumps({"entries": len(entries), "photos": len(photos["full"]),
                      "reduced": len(photos["reduced"]), "animals": counted["animals"],
                      "notes": [e["body"].get("text") for e in entries if e["kind"] == "note"]}))


if __name__ == "__main__":
    try:
        main()
    except (AssertionError, KeyError, ValueError) as trouble:
        sys.exit(f"not as FORMAT.md says: {trouble!r}")

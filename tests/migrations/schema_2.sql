PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE book (
    only   INTEGER PRIMARY KEY CHECK (only = 1),
    id     BLOB NOT NULL CHECK (length(id) = 16),
    device INTEGER NOT NULL REFERENCES device (ref),
    -- The highest hybrid logical clock ever taken over from another device.
    heard  INTEGER NOT NULL DEFAULT 0
, taking_back INTEGER REFERENCES arrival (number)) STRICT;
INSERT INTO book VALUES(1,X'019e0902d0c075238ec0357905d86105',1,116551164887040003,NULL);
CREATE TABLE device (
    ref INTEGER PRIMARY KEY,
    id  BLOB NOT NULL UNIQUE CHECK (length(id) = 16)
) STRICT;
INSERT INTO device VALUES(1,X'019e0902d0c075228efa18235092eb22');
INSERT INTO device VALUES(2,X'019e0d8461407638a0ad173d61562430');
CREATE TABLE fact (
    subject     BLOB    NOT NULL,
    happened_at INTEGER NOT NULL,
    hlc         INTEGER NOT NULL,
    entry       BLOB    NOT NULL,
    kind        TEXT    NOT NULL,
    day         INTEGER NOT NULL,
    body        TEXT    NOT NULL,
    PRIMARY KEY (subject, happened_at, hlc, entry)
) STRICT, WITHOUT ROWID;
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1777490040000,116545266647040000,X'019e0d4d72c0769093f3d99ac47e4d7c','offered',20572,'{"outcome":"ate","text":"seen from the left"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778271240000,116540783984640000,X'019e0939bf40751eb130b12d96c7b111','offered',20581,'{"count":2,"outcome":"ate","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778274840000,116541019914240000,X'019e0970adc073b18aa5581a9501d6a5','leftovers_out',20581,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778278440000,116541255843840000,X'019e09a79c4072cab5bc8633c6727c64','watered',20581,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778282040000,116541491773440000,X'019e09de8ac0718794a7da70219cfb65','dampened',20581,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778285640000,116541727703040000,X'019e0a1579407330bc480ceac462d498','premoult_sign',20582,'{"sign":"dull colour","text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778289240000,116541963632640000,X'019e0a4c67c077e3930e18a1b0ffdf5e','moulted',20582,'{"span_mm":61.5,"text":"webbed over the \"dish\"; 50 % ä <b>","ultimate":true}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778292840000,116542199562240000,X'019e0a83564073e2b04d57ba94ac0343','measured',20582,'{"carapace_mm":21.25,"mass_g":7.5,"method":"ruler","span_mm":62.0,"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778296440000,116542435491840000,X'019e0aba44c07685bd33f3351b59ff04','fangs_black',20582,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778303640000,116542907351040000,X'019e0b2821c0749baf8ee4e32aa42aee','rehoused',20582,'{"enclosure":"019e0902-d0c0-7379-9080-440e5c839ea2","text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778307240000,116543143280640000,X'019e0b5f104073cba46aee6d262f8b7e','moved',20582,'{"place":"B / 2 / 7","text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778310840000,116543379210240000,X'019e0b95fec0770387dd4f391d2a2673','note',20582,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778314440000,116543615139840000,X'019e0bcced40712e97fb770a6055850e','photo',20582,'{"about":"019e0a4c-67c0-77e3-930e-18a1b0ffdf5e","original":"0682c5f2076f099c34cfdd15a9e063849ed437a49677e6fcc5b4198c76575be5","picture":"2cea274d0bedc39ec4ab6ba9e59ec889e3ed6fb56a1cf088a64d9b383378dc97","role":"moult","text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778318040000,116543851069440000,X'019e0c03dbc07031a912c28c6ae82203','sexed',20582,'{"method":"eye","sex":"male","text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778332440000,116544794787840000,X'019e0cdf95c071c38af9772a9e2cccbf','lent',20582,'{"text":"webbed over the \"dish\"; 50 % ä <b>","until":"2026-07-01"}');
INSERT INTO fact VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778336040000,116545030717440000,X'019e0d16844070c3bc8cf668b236a5fc','returned',20582,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd',1778300040000,116542671421440000,X'019e0af133407681aa3b45bbbf3db9ff','seen',20582,'{"count":3,"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd',1778321640000,116544086999040000,X'019e0c3aca4070228051ceea387e253b','died',20582,'{"cause":"stuck in the moult","count":1,"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf',1778325240000,116544322928640000,X'019e0c71b8c070e9b5a9c23486f39093','sold',20582,'{"confidential":true,"party":"a visitor","price":"40","text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf',1778328840000,116544558858240000,X'019e0ca8a74072ec8f84c059aeb93e06','given',20582,'{"text":"webbed over the \"dish\"; 50 % ä <b>"}');
INSERT INTO fact VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf',1778429640000,116551164887040002,X'019e12aabd407638b5f9cd809d895067','sold',20583,'{"count":1,"party":"another visitor"}');
CREATE TABLE digest (
    subject BLOB    PRIMARY KEY,
    last_at INTEGER NOT NULL,                     -- history position of the newest fact folded in
    last_hlc INTEGER NOT NULL,
    last_entry BLOB NOT NULL,
    state   BLOB    NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO digest VALUES(X'019e0902d0c0737ba35a747e05fcbc38',1778336040000,116545030717440000,X'019e0d16844070c3bc8cf668b236a5fc',X'0102b8c10202ccc10202cac1020e637269636b6574020000000000002040040002cac1020e637269636b65740200000000000020400400000004b8c10200000200cac1020e637269636b657402000000000000204004000202ccc102020000000000c04e400002ccc102000002020000000000004f4002000000000040354002cac10202cac102000002ccc10200020002ccc1020204');
INSERT INTO digest VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd',1778321640000,116544086999040000,X'019e0c3aca4070228051ceea387e253b',X'0102ccc10202ccc10200000000000000000000000000000002ccc10202060002020402ccc10200');
INSERT INTO digest VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf',1778429640000,116551164887040002,X'019e12aabd407638b5f9cd809d895067',X'0102ccc10202cec10200000000000000000000000000000000000006020602cec10200');
CREATE TABLE subject (
    id          BLOB PRIMARY KEY,
    number      TEXT    NOT NULL,
    form        INTEGER NOT NULL,
    species     TEXT    NOT NULL,
    sex         INTEGER NOT NULL,
    hatched     INTEGER,
    acquired    INTEGER,
    source      TEXT    NOT NULL,
    standing    INTEGER NOT NULL,
    quarantined INTEGER NOT NULL,
    mature      INTEGER NOT NULL,
    enclosure   BLOB,
    place       TEXT    NOT NULL,
    mother      BLOB,
    father      BLOB,
    headcount   INTEGER NOT NULL,
    note        TEXT    NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO subject VALUES(X'019e0902d0c0737ba35a747e05fcbc38','214',0,'Brachypelma hamorii',2,NULL,NULL,'',0,0,1,NULL,'B / 2 / 7',NULL,NULL,1,'seen from the left');
INSERT INTO subject VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd','260',1,'Neoholothele incei',0,NULL,NULL,'',0,0,0,NULL,'',NULL,NULL,4,'');
INSERT INTO subject VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf','300',2,'Grammostola pulchra',0,NULL,NULL,'',0,0,0,NULL,'',NULL,NULL,197,'');
CREATE TABLE enclosure (
    id           BLOB PRIMARY KEY,
    name         TEXT NOT NULL,
    length_mm    REAL NOT NULL,
    width_mm     REAL NOT NULL,
    height_mm    REAL NOT NULL,
    substrate_mm REAL NOT NULL,
    place        TEXT NOT NULL,
    note         TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO enclosure VALUES(X'019e0902d0c073799080440e5c839ea2','E1',200.0,150.0,150.0,80.0,'A / 1 / 3','cork bark');
CREATE TABLE tag (
    id        BLOB PRIMARY KEY,
    code      TEXT NOT NULL UNIQUE,
    side_mm   REAL NOT NULL,
    subject   BLOB,
    enclosure BLOB
) STRICT, WITHOUT ROWID;
INSERT INTO tag VALUES(X'0d0aa9905787833fadeb94bfe7d0b897','7Q2MZX89',20.0,X'019e0902d0c0737ba35a747e05fcbc38',NULL);
CREATE TABLE setting (
    name  TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO setting VALUES('code','KR');
INSERT INTO setting VALUES('contact','Ask at the door');
INSERT INTO setting VALUES('room','Kiln Row');
INSERT INTO setting VALUES('rule.feed.interval.adult','8-12');
CREATE TABLE IF NOT EXISTS "entry" (
    n           INTEGER PRIMARY KEY,              -- order of arrival in this file
    id          BLOB    NOT NULL UNIQUE CHECK (length(id) = 16),
    device      INTEGER NOT NULL REFERENCES device (ref),
    seq         INTEGER NOT NULL,                 -- 1, 2, 3 ... within the device
    act         INTEGER NOT NULL,                 -- seq of the first entry of the same tap
    hlc         INTEGER NOT NULL,                 -- hybrid logical clock: ms << 16 | counter
    kind        TEXT    NOT NULL,
    thing       BLOB    CHECK (thing IS NULL OR length(thing) = 16),
    body        TEXT    NOT NULL,                 -- a JSON object
    recorded_at INTEGER NOT NULL,                 -- ms since 1970 UTC
    happened_at INTEGER NOT NULL,
    day         INTEGER NOT NULL,                 -- the keeper's civil day, days since 1970-01-01
    zone        TEXT    NOT NULL                  -- IANA name of the keeper's zone
) STRICT;
INSERT INTO entry VALUES(1,X'019e0902d0c07459896893b9d2c24ee9',1,1,1,116540548055040000,'set',X'019e0902d0c075238ec0357905d86105','{"fields":{"code":"KR","room":"Kiln Row"},"over":{},"type":"book"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(2,X'019e0902d0c07378894bf11bf9840d13',1,2,2,116540548055040001,'set',X'019e0902d0c075238ec0357905d86105','{"fields":{"contact":"Ask at the door","rule.feed.interval.adult":"8-12"},"over":{},"type":"book"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(3,X'019e0902d0c0737a9b33b67486bd618e',1,3,3,116540548055040002,'set',X'019e0902d0c073799080440e5c839ea2','{"fields":{"height_mm":150.0,"length_mm":200.0,"name":"E1","note":"cork bark","place":"A / 1 / 3","substrate_mm":80.0,"width_mm":150.0},"over":{},"type":"enclosure"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(4,X'019e0902d0c0737c99516a562c72f13f',1,4,4,116540548055040003,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"number":"214","species":"Brachypelma hamorii"},"over":{},"type":"subject"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(5,X'019e0902d0c0737ea8cb6f435ec11a45',1,5,5,116540548055040004,'set',X'019e0902d0c0737dba08f7aa46e5a0cd','{"fields":{"count":5,"form":"group","number":"260","species":"Neoholothele incei"},"over":{},"type":"subject"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(6,X'019e0902d0c073809bc1ec0e0340624e',1,6,6,116540548055040005,'set',X'019e0902d0c0737fa7bfc5911fdcbdbf','{"fields":{"count":200,"form":"lot","number":"300","species":"Grammostola pulchra"},"over":{},"type":"subject"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(7,X'019e0902d0c073819a0d9f6c02faf81c',1,7,7,116540548055040006,'set',X'0d0aa9905787833fadeb94bfe7d0b897','{"fields":{"code":"7Q2MZX89","side_mm":20.0,"subject":"019e0902-d0c0-737b-a35a-747e05fcbc38"},"over":{},"type":"tag"}',1778267640000,1778267640000,20581,'UTC');
INSERT INTO entry VALUES(8,X'019e0939bf40751eb130b12d96c7b111',1,8,8,116540783984640000,'offered',X'019e0902d0c0737ba35a747e05fcbc38','{"count":2,"outcome":"ate","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778271240000,1778271240000,20581,'UTC');
INSERT INTO entry VALUES(9,X'019e0970adc073b18aa5581a9501d6a5',1,9,9,116541019914240000,'leftovers_out',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778274840000,1778274840000,20581,'UTC');
INSERT INTO entry VALUES(10,X'019e09a79c4072cab5bc8633c6727c64',1,10,10,116541255843840000,'watered',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778278440000,1778278440000,20581,'UTC');
INSERT INTO entry VALUES(11,X'019e09de8ac0718794a7da70219cfb65',1,11,11,116541491773440000,'dampened',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778282040000,1778282040000,20581,'UTC');
INSERT INTO entry VALUES(12,X'019e0a1579407330bc480ceac462d498',1,12,12,116541727703040000,'premoult_sign',X'019e0902d0c0737ba35a747e05fcbc38','{"sign":"dull colour","text":"webbed over the \"dish\"; 50 % ä <b>"}',1778285640000,1778285640000,20582,'UTC');
INSERT INTO entry VALUES(13,X'019e0a4c67c077e3930e18a1b0ffdf5e',1,13,13,116541963632640000,'moulted',X'019e0902d0c0737ba35a747e05fcbc38','{"span_mm":61.5,"text":"webbed over the \"dish\"; 50 % ä <b>","ultimate":true}',1778289240000,1778289240000,20582,'UTC');
INSERT INTO entry VALUES(14,X'019e0a4c67c077e4bca1649f160c8448',1,14,13,116541963632640001,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"mature":true},"over":{},"type":"subject"}',1778289240000,1778289240000,20582,'UTC');
INSERT INTO entry VALUES(15,X'019e0a83564073e2b04d57ba94ac0343',1,15,15,116542199562240000,'measured',X'019e0902d0c0737ba35a747e05fcbc38','{"carapace_mm":21.25,"mass_g":7.5,"method":"ruler","span_mm":62.0,"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778292840000,1778292840000,20582,'UTC');
INSERT INTO entry VALUES(16,X'019e0aba44c07685bd33f3351b59ff04',1,16,16,116542435491840000,'fangs_black',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778296440000,1778296440000,20582,'UTC');
INSERT INTO entry VALUES(17,X'019e0af133407681aa3b45bbbf3db9ff',1,17,17,116542671421440000,'seen',X'019e0902d0c0737dba08f7aa46e5a0cd','{"count":3,"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778300040000,1778300040000,20582,'UTC');
INSERT INTO entry VALUES(18,X'019e0b2821c0749baf8ee4e32aa42aee',1,18,18,116542907351040000,'rehoused',X'019e0902d0c0737ba35a747e05fcbc38','{"enclosure":"019e0902-d0c0-7379-9080-440e5c839ea2","text":"webbed over the \"dish\"; 50 % ä <b>"}',1778303640000,1778303640000,20582,'UTC');
INSERT INTO entry VALUES(19,X'019e0b2821c0749c922b677bd44e7d29',1,19,18,116542907351040001,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"enclosure":"019e0902-d0c0-7379-9080-440e5c839ea2"},"over":{},"type":"subject"}',1778303640000,1778303640000,20582,'UTC');
INSERT INTO entry VALUES(20,X'019e0b5f104073cba46aee6d262f8b7e',1,20,20,116543143280640000,'moved',X'019e0902d0c0737ba35a747e05fcbc38','{"place":"B / 2 / 7","text":"webbed over the \"dish\"; 50 % ä <b>"}',1778307240000,1778307240000,20582,'UTC');
INSERT INTO entry VALUES(21,X'019e0b5f104073cca113c835cd2695ba',1,21,20,116543143280640001,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"enclosure":null,"place":"B / 2 / 7"},"over":{"enclosure":["019e0b28-21c0-749c-922b-677bd44e7d29"]},"type":"subject"}',1778307240000,1778307240000,20582,'UTC');
INSERT INTO entry VALUES(22,X'019e0b95fec0770387dd4f391d2a2673',1,22,22,116543379210240000,'note',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778310840000,1778310840000,20582,'UTC');
INSERT INTO entry VALUES(23,X'019e0bcced40712e97fb770a6055850e',1,23,23,116543615139840000,'photo',X'019e0902d0c0737ba35a747e05fcbc38','{"about":"019e0a4c-67c0-77e3-930e-18a1b0ffdf5e","original":"0682c5f2076f099c34cfdd15a9e063849ed437a49677e6fcc5b4198c76575be5","picture":"2cea274d0bedc39ec4ab6ba9e59ec889e3ed6fb56a1cf088a64d9b383378dc97","role":"moult","text":"webbed over the \"dish\"; 50 % ä <b>"}',1778314440000,1778314440000,20582,'UTC');
INSERT INTO entry VALUES(24,X'019e0c03dbc07031a912c28c6ae82203',1,24,24,116543851069440000,'sexed',X'019e0902d0c0737ba35a747e05fcbc38','{"method":"eye","sex":"male","text":"webbed over the \"dish\"; 50 % ä <b>"}',1778318040000,1778318040000,20582,'UTC');
INSERT INTO entry VALUES(25,X'019e0c03dbc070329f826266cbd72700',1,25,24,116543851069440001,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"sex":"male"},"over":{},"type":"subject"}',1778318040000,1778318040000,20582,'UTC');
INSERT INTO entry VALUES(26,X'019e0c3aca4070228051ceea387e253b',1,26,26,116544086999040000,'died',X'019e0902d0c0737dba08f7aa46e5a0cd','{"cause":"stuck in the moult","count":1,"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778321640000,1778321640000,20582,'UTC');
INSERT INTO entry VALUES(27,X'019e0c71b8c070e9b5a9c23486f39093',1,27,27,116544322928640000,'sold',X'019e0902d0c0737fa7bfc5911fdcbdbf','{"confidential":true,"party":"a visitor","price":"40","text":"webbed over the \"dish\"; 50 % ä <b>"}',1778325240000,1778325240000,20582,'UTC');
INSERT INTO entry VALUES(28,X'019e0ca8a74072ec8f84c059aeb93e06',1,28,28,116544558858240000,'given',X'019e0902d0c0737fa7bfc5911fdcbdbf','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778328840000,1778328840000,20582,'UTC');
INSERT INTO entry VALUES(29,X'019e0cdf95c071c38af9772a9e2cccbf',1,29,29,116544794787840000,'lent',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>","until":"2026-07-01"}',1778332440000,1778332440000,20582,'UTC');
INSERT INTO entry VALUES(30,X'019e0d16844070c3bc8cf668b236a5fc',1,30,30,116545030717440000,'returned',X'019e0902d0c0737ba35a747e05fcbc38','{"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778336040000,1778336040000,20582,'UTC');
INSERT INTO entry VALUES(31,X'019e0d4d72c0769093f3d99ac47e4d7c',1,31,31,116545266647040000,'offered',X'019e0902d0c0737ba35a747e05fcbc38','{"count":2,"outcome":"ate","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"}',1778339640000,1777490040000,20572,'UTC');
INSERT INTO entry VALUES(32,X'019e0d4d72c076918f2087a41f6620f6',1,32,32,116545266647040001,'amend',X'019e0902d0c0737ba35a747e05fcbc38','{"body":{"count":2,"outcome":"part","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"},"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","over":[]}',1778339640000,1778339640000,20582,'UTC');
INSERT INTO entry VALUES(33,X'019e0d4d72c07692852f7f0a26a58c8a',1,33,33,116545266647040002,'amend',X'019e0902d0c0737ba35a747e05fcbc38','{"body":{"count":2,"outcome":"refused","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"},"day":20573,"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","happened_at":1777576440000,"over":["019e0d4d-72c0-7691-8f20-87a41f6620f6"]}',1778339640000,1778339640000,20582,'UTC');
INSERT INTO entry VALUES(34,X'019e0d4d72c07693b10f7d64cdba7392',1,34,34,116545266647040003,'retract',X'019e0902d0c0737ba35a747e05fcbc38','{"entry":"019e0d4d-72c0-7692-852f-7f0a26a58c8a"}',1778339640000,1778339640000,20582,'UTC');
INSERT INTO entry VALUES(35,X'019e0d84614073b0a9a7cee0bb8683b8',1,35,35,116545502576640000,'watered',X'019e0902d0c0737ba35a747e05fcbc38','{}',1778343240000,1778343240000,20582,'UTC');
INSERT INTO entry VALUES(36,X'019e0d84614073b1a1740d2e36eed2a2',1,36,36,116545502576640001,'retract',X'019e0902d0c0737ba35a747e05fcbc38','{"entry":"019e0d84-6140-73b0-a9a7-cee0bb8683b8"}',1778343240000,1778343240000,20582,'UTC');
INSERT INTO entry VALUES(37,X'019e0d84614073b28cdf05b5c1739be5',1,37,37,116545502576640002,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"note":"shy","quarantine":true},"over":{},"type":"subject"}',1778343240000,1778343240000,20582,'UTC');
INSERT INTO entry VALUES(38,X'0196b0a1000170008000000000000001',1,38,38,116545502576640003,'levitated',X'019e0902d0c0737ba35a747e05fcbc38','{"deep":{"list":[1,2,null]},"mm":3}',1778343240000,1778343240000,20582,'UTC');
INSERT INTO entry VALUES(39,X'019e12aabd4071acaa89eceb9774795c',1,39,39,116551164887040000,'amend',X'019e0902d0c0737ba35a747e05fcbc38','{"body":{"outcome":"ate","text":"seen from the right"},"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","over":["019e0d4d-72c0-7691-8f20-87a41f6620f6"]}',1778429640000,1778429640000,20583,'UTC');
INSERT INTO entry VALUES(40,X'019e12aabd4071ad8c8f8e69301b9d24',1,40,40,116551164887040001,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"note":"seen from the right"},"over":{"note":["019e0d84-6140-73b2-8cdf-05b5c1739be5"]},"type":"subject"}',1778429640000,1778429640000,20583,'UTC');
INSERT INTO entry VALUES(41,X'019e12aabd40763690e8b9f4fd0c627a',2,1,1,116551164887040000,'amend',X'019e0902d0c0737ba35a747e05fcbc38','{"body":{"outcome":"ate","text":"seen from the left"},"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","over":["019e0d4d-72c0-7691-8f20-87a41f6620f6"]}',1778429640000,1778429640000,20583,'UTC');
INSERT INTO entry VALUES(42,X'019e12aabd407637a7b84d4642d37c55',2,2,2,116551164887040001,'set',X'019e0902d0c0737ba35a747e05fcbc38','{"fields":{"note":"seen from the left"},"over":{"note":["019e0d84-6140-73b2-8cdf-05b5c1739be5"]},"type":"subject"}',1778429640000,1778429640000,20583,'UTC');
INSERT INTO entry VALUES(43,X'019e12aabd407638b5f9cd809d895067',2,3,3,116551164887040002,'sold',X'019e0902d0c0737fa7bfc5911fdcbdbf','{"count":1}',1778429640000,1778429640000,20583,'UTC');
INSERT INTO entry VALUES(44,X'019e12aabd4076399889fe8f0d595725',2,4,3,116551164887040003,'amend',X'019e0902d0c0737fa7bfc5911fdcbdbf','{"body":{"count":1,"party":"another visitor"},"confidential":true,"entry":"019e12aa-bd40-7638-b5f9-cd809d895067","over":[]}',1778429640000,1778429640000,20583,'UTC');
CREATE TABLE arrival (
    number     INTEGER PRIMARY KEY,
    at         INTEGER NOT NULL,                  -- ms since 1970 UTC
    source     TEXT    NOT NULL,                  -- name of the file, for the keeper
    device     BLOB,                              -- that wrote the file, where it says so
    first_n    INTEGER NOT NULL,                  -- entries first_n to last_n
    last_n     INTEGER NOT NULL,
    entries    INTEGER NOT NULL,
    taken_back INTEGER                            -- when, ms since 1970 UTC
) STRICT;
INSERT INTO arrival VALUES(1,1778429640000,'room.burrow',NULL,41,44,4,NULL);
CREATE TABLE correction (
    target BLOB    NOT NULL,
    hlc    INTEGER NOT NULL,
    entry  BLOB    NOT NULL,
    kind   TEXT    NOT NULL,
    body   TEXT    NOT NULL,
    device BLOB    NOT NULL,
    seq    INTEGER NOT NULL,
    PRIMARY KEY (target, hlc, entry)
) STRICT, WITHOUT ROWID;
INSERT INTO correction VALUES(X'019e0d4d72c0769093f3d99ac47e4d7c',116545266647040001,X'019e0d4d72c076918f2087a41f6620f6','amend','{"body":{"count":2,"outcome":"part","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"},"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","over":[]}',X'019e0902d0c075228efa18235092eb22',32);
INSERT INTO correction VALUES(X'019e0d4d72c0769093f3d99ac47e4d7c',116545266647040002,X'019e0d4d72c07692852f7f0a26a58c8a','amend','{"body":{"count":2,"outcome":"refused","prey":"cricket","prey_mm":8.0,"text":"webbed over the \"dish\"; 50 % ä <b>"},"day":20573,"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","happened_at":1777576440000,"over":["019e0d4d-72c0-7691-8f20-87a41f6620f6"]}',X'019e0902d0c075228efa18235092eb22',33);
INSERT INTO correction VALUES(X'019e0d4d72c0769093f3d99ac47e4d7c',116551164887040000,X'019e12aabd4071acaa89eceb9774795c','amend','{"body":{"outcome":"ate","text":"seen from the right"},"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","over":["019e0d4d-72c0-7691-8f20-87a41f6620f6"]}',X'019e0902d0c075228efa18235092eb22',39);
INSERT INTO correction VALUES(X'019e0d4d72c0769093f3d99ac47e4d7c',116551164887040000,X'019e12aabd40763690e8b9f4fd0c627a','amend','{"body":{"outcome":"ate","text":"seen from the left"},"entry":"019e0d4d-72c0-7690-93f3-d99ac47e4d7c","over":["019e0d4d-72c0-7691-8f20-87a41f6620f6"]}',X'019e0d8461407638a0ad173d61562430',1);
INSERT INTO correction VALUES(X'019e0d4d72c07692852f7f0a26a58c8a',116545266647040003,X'019e0d4d72c07693b10f7d64cdba7392','retract','{"entry":"019e0d4d-72c0-7692-852f-7f0a26a58c8a"}',X'019e0902d0c075228efa18235092eb22',34);
INSERT INTO correction VALUES(X'019e0d84614073b0a9a7cee0bb8683b8',116545502576640001,X'019e0d84614073b1a1740d2e36eed2a2','retract','{"entry":"019e0d84-6140-73b0-a9a7-cee0bb8683b8"}',X'019e0902d0c075228efa18235092eb22',36);
INSERT INTO correction VALUES(X'019e12aabd407638b5f9cd809d895067',116551164887040003,X'019e12aabd4076399889fe8f0d595725','amend','{"body":{"count":1,"party":"another visitor"},"confidential":true,"entry":"019e12aa-bd40-7638-b5f9-cd809d895067","over":[]}',X'019e0d8461407638a0ad173d61562430',4);
CREATE TABLE field (
    thing     BLOB    NOT NULL,
    name      TEXT    NOT NULL,
    hlc       INTEGER NOT NULL,
    entry     BLOB    NOT NULL,
    type      TEXT    NOT NULL,
    value     TEXT    NOT NULL,                   -- JSON
    device    BLOB    NOT NULL,
    seq       INTEGER NOT NULL,
    over      TEXT,                               -- JSON array: entries whose values it replaced
    retracted INTEGER NOT NULL,                   -- still says what its entry replaced
    PRIMARY KEY (thing, name, hlc, entry)
) STRICT, WITHOUT ROWID;
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','height_mm',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','150.0',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','length_mm',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','200.0',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','name',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','"E1"',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','note',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','"cork bark"',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','place',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','"A / 1 / 3"',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','substrate_mm',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','80.0',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c073799080440e5c839ea2','width_mm',116540548055040002,X'019e0902d0c0737a9b33b67486bd618e','enclosure','150.0',X'019e0902d0c075228efa18235092eb22',3,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','enclosure',116542907351040001,X'019e0b2821c0749c922b677bd44e7d29','subject','"019e0902-d0c0-7379-9080-440e5c839ea2"',X'019e0902d0c075228efa18235092eb22',19,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','enclosure',116543143280640001,X'019e0b5f104073cca113c835cd2695ba','subject','null',X'019e0902d0c075228efa18235092eb22',21,'["019e0b28-21c0-749c-922b-677bd44e7d29"]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','mature',116541963632640001,X'019e0a4c67c077e4bca1649f160c8448','subject','true',X'019e0902d0c075228efa18235092eb22',14,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','note',116545502576640002,X'019e0d84614073b28cdf05b5c1739be5','subject','"shy"',X'019e0902d0c075228efa18235092eb22',37,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','note',116551164887040001,X'019e12aabd4071ad8c8f8e69301b9d24','subject','"seen from the right"',X'019e0902d0c075228efa18235092eb22',40,'["019e0d84-6140-73b2-8cdf-05b5c1739be5"]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','note',116551164887040001,X'019e12aabd407637a7b84d4642d37c55','subject','"seen from the left"',X'019e0d8461407638a0ad173d61562430',2,'["019e0d84-6140-73b2-8cdf-05b5c1739be5"]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','number',116540548055040003,X'019e0902d0c0737c99516a562c72f13f','subject','"214"',X'019e0902d0c075228efa18235092eb22',4,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','place',116543143280640001,X'019e0b5f104073cca113c835cd2695ba','subject','"B / 2 / 7"',X'019e0902d0c075228efa18235092eb22',21,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','quarantine',116545502576640002,X'019e0d84614073b28cdf05b5c1739be5','subject','true',X'019e0902d0c075228efa18235092eb22',37,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','sex',116543851069440001,X'019e0c03dbc070329f826266cbd72700','subject','"male"',X'019e0902d0c075228efa18235092eb22',25,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737ba35a747e05fcbc38','species',116540548055040003,X'019e0902d0c0737c99516a562c72f13f','subject','"Brachypelma hamorii"',X'019e0902d0c075228efa18235092eb22',4,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd','count',116540548055040004,X'019e0902d0c0737ea8cb6f435ec11a45','subject','5',X'019e0902d0c075228efa18235092eb22',5,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd','form',116540548055040004,X'019e0902d0c0737ea8cb6f435ec11a45','subject','"group"',X'019e0902d0c075228efa18235092eb22',5,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd','number',116540548055040004,X'019e0902d0c0737ea8cb6f435ec11a45','subject','"260"',X'019e0902d0c075228efa18235092eb22',5,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737dba08f7aa46e5a0cd','species',116540548055040004,X'019e0902d0c0737ea8cb6f435ec11a45','subject','"Neoholothele incei"',X'019e0902d0c075228efa18235092eb22',5,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf','count',116540548055040005,X'019e0902d0c073809bc1ec0e0340624e','subject','200',X'019e0902d0c075228efa18235092eb22',6,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf','form',116540548055040005,X'019e0902d0c073809bc1ec0e0340624e','subject','"lot"',X'019e0902d0c075228efa18235092eb22',6,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf','number',116540548055040005,X'019e0902d0c073809bc1ec0e0340624e','subject','"300"',X'019e0902d0c075228efa18235092eb22',6,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c0737fa7bfc5911fdcbdbf','species',116540548055040005,X'019e0902d0c073809bc1ec0e0340624e','subject','"Grammostola pulchra"',X'019e0902d0c075228efa18235092eb22',6,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c075238ec0357905d86105','code',116540548055040000,X'019e0902d0c07459896893b9d2c24ee9','book','"KR"',X'019e0902d0c075228efa18235092eb22',1,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c075238ec0357905d86105','contact',116540548055040001,X'019e0902d0c07378894bf11bf9840d13','book','"Ask at the door"',X'019e0902d0c075228efa18235092eb22',2,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c075238ec0357905d86105','room',116540548055040000,X'019e0902d0c07459896893b9d2c24ee9','book','"Kiln Row"',X'019e0902d0c075228efa18235092eb22',1,'[]',0);
INSERT INTO field VALUES(X'019e0902d0c075238ec0357905d86105','rule.feed.interval.adult',116540548055040001,X'019e0902d0c07378894bf11bf9840d13','book','"8-12"',X'019e0902d0c075228efa18235092eb22',2,'[]',0);
INSERT INTO field VALUES(X'0d0aa9905787833fadeb94bfe7d0b897','code',116540548055040006,X'019e0902d0c073819a0d9f6c02faf81c','tag','"7Q2MZX89"',X'019e0902d0c075228efa18235092eb22',7,'[]',0);
INSERT INTO field VALUES(X'0d0aa9905787833fadeb94bfe7d0b897','side_mm',116540548055040006,X'019e0902d0c073819a0d9f6c02faf81c','tag','20.0',X'019e0902d0c075228efa18235092eb22',7,'[]',0);
INSERT INTO field VALUES(X'0d0aa9905787833fadeb94bfe7d0b897','subject',116540548055040006,X'019e0902d0c073819a0d9f6c02faf81c','tag','"019e0902-d0c0-737b-a35a-747e05fcbc38"',X'019e0902d0c075228efa18235092eb22',7,'[]',0);
CREATE TABLE difference (
    kind  INTEGER NOT NULL,                       -- 0 field, 1 amendment, 2 its confidential part
    about BLOB    NOT NULL,                       -- the thing or the fact
    type  TEXT    NOT NULL,                       -- of the thing, else empty
    name  TEXT    NOT NULL,                       -- of the field, else empty
    PRIMARY KEY (kind, about, type, name)
) STRICT, WITHOUT ROWID;
INSERT INTO difference VALUES(0,X'019e0902d0c0737ba35a747e05fcbc38','subject','note');
INSERT INTO difference VALUES(1,X'019e0d4d72c0769093f3d99ac47e4d7c','','');
CREATE TABLE confidential (
    entry BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;
INSERT INTO confidential VALUES(X'019e0c71b8c070e9b5a9c23486f39093');
INSERT INTO confidential VALUES(X'019e12aabd4076399889fe8f0d595725');
CREATE TABLE fork (
    device BLOB    NOT NULL,
    seq    INTEGER NOT NULL,
    PRIMARY KEY (device, seq)
) STRICT, WITHOUT ROWID;
CREATE TABLE peer (
    device     BLOB    PRIMARY KEY CHECK (length(device) = 16),
    written_at INTEGER NOT NULL,                  -- when that file was written, ms since 1970 UTC
    vector     TEXT    NOT NULL                   -- JSON, as in the file
) STRICT, WITHOUT ROWID;
CREATE TABLE arrived_photo (
    arrival INTEGER NOT NULL,                     -- its number
    picture BLOB    NOT NULL CHECK (length(picture) = 32),
    reduced INTEGER NOT NULL,                     -- 1 for the smaller copy
    PRIMARY KEY (arrival, picture, reduced)
) STRICT, WITHOUT ROWID;
CREATE TABLE shared_folder (
    ref          INTEGER PRIMARY KEY,
    path         TEXT    NOT NULL UNIQUE,
    confidential INTEGER NOT NULL,                -- 1 where nothing was left out
    newest       BLOB,                            -- the last entry that was looked at
    vector       TEXT    NOT NULL                 -- JSON: what the files in the folder hold together
) STRICT;
CREATE TABLE shared_file (
    folder INTEGER NOT NULL REFERENCES shared_folder (ref),
    device BLOB    NOT NULL CHECK (length(device) = 16),
    name   TEXT    NOT NULL,
    PRIMARY KEY (folder, device, name)
) STRICT, WITHOUT ROWID;
CREATE INDEX fact_photo ON fact (happened_at) WHERE kind = 'photo';
CREATE INDEX subject_number ON subject (number);
CREATE INDEX tag_subject ON tag (subject) WHERE subject IS NOT NULL;
CREATE INDEX tag_enclosure ON tag (enclosure) WHERE enclosure IS NOT NULL;
CREATE INDEX entry_of_device ON entry (device, seq, id);
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE (ABORT, 'entries are never changed'); END;
CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
WHEN NOT EXISTS (SELECT 1 FROM book JOIN arrival a ON a.number = book.taking_back
                 WHERE old.n BETWEEN a.first_n AND a.last_n AND a.taken_back IS NULL
                 AND a.number = (SELECT max(number) FROM arrival))
BEGIN SELECT RAISE (ABORT, 'entries are never deleted'); END;
COMMIT;
PRAGMA application_id = 1114792555; PRAGMA user_version = 2;

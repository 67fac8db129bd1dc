//! What the words and marks of the trade say about an alloy. Common practice, no source.

/// Parts per thousand by mass as struck on gold of so many karat; 24 is fine.
pub(super) const KARATS: [(u32, &str); 8] =
    [(8, "333"), (9, "375"), (10, "417"), (14, "585"), (18, "750"), (21, "875"), (22, "916"), (24, "999")];

/// Marks that mean another one.
pub(super) const SAME_MARKS: [(&str, &str); 7] =
    [("416", "417"), ("583", "585"), ("917", "916"), ("9999", "999"), ("9995", "999"), ("9999", "999"), ("995", "999")];

/// What stands behind a number of karats.
pub(super) const KARAT: [&str; 7] = ["k", "kt", "ct", "kar", "karat", "carat", "karats"];

/// A colour in one or two letters behind the karats: 14KY, 18ktWG.
pub(super) const SHORT_COLOURS: [(&str, &str); 9] = [
    ("y", "yellow"),
    ("yg", "yellow"),
    ("w", "white"),
    ("wg", "white"),
    ("r", "rose"),
    ("rg", "rose"),
    ("p", "rose"),
    ("pg", "rose"),
    ("rosegold", "rose"),
];

/// Names of metals, which a mark can leave unsaid.
pub(super) const METALS: [&str; 4] = ["silver", "gold", "platinum", "palladium"];

/// Words that say nothing about an alloy.
pub(super) const EMPTY: [&str; 22] = [
    "alloy",
    "legierung",
    "metal",
    "metall",
    "casting",
    "cast",
    "guss",
    "er",
    "karat",
    "solid",
    "massiv",
    "in",
    "aus",
    "of",
    "the",
    "and",
    "und",
    "with",
    "mit",
    "echt",
    "genuine",
    "real",
];

/// Words by what they say, without marks on letters; one word can say several things.
pub(super) const WORDS: [(&[&str], &[&str]); 44] = [
    (&["silver", "silber", "ag", "argent"], &["silver"]),
    (&["sterling", "sterlingsilver", "sterlingsilber", "ster", "stg", "ss"], &["silver", "925"]),
    (&["feinsilber", "finesilver"], &["silver", "999"]),
    (&["gold", "au"], &["gold"]),
    (&["feingold", "finegold"], &["gold", "999"]),
    (&["fine", "fein", "pure"], &["999"]),
    (&["gelbgold", "yellowgold", "yg"], &["gold", "yellow"]),
    (&["weissgold", "whitegold", "wg"], &["gold", "white"]),
    (&["rotgold", "rosegold", "rosagold", "redgold", "pinkgold", "rg"], &["gold", "rose"]),
    (&["grungold", "gruengold", "greengold"], &["gold", "green"]),
    (&["yellow", "gelb", "gelbes"], &["yellow"]),
    (&["white", "weiss", "weisses"], &["white"]),
    (&["rose", "red", "pink", "rot", "rosa", "rotes"], &["rose"]),
    (&["green", "grun", "gruen"], &["green"]),
    (&["pale", "blass", "hell"], &["pale"]),
    (&["platinum", "platin", "plat", "pt"], &["platinum"]),
    (&["palladium", "pd"], &["palladium"]),
    (&["bronze", "brz"], &["bronze"]),
    (&["zinnbronze"], &["tin", "bronze"]),
    (&["siliziumbronze", "siliciumbronze"], &["silicon", "bronze"]),
    (&["brass", "messing", "ms"], &["brass"]),
    (&["gelbmessing"], &["yellow", "brass"]),
    (&["rotmessing"], &["rose", "brass"]),
    (&["pewter", "zinn"], &["pewter"]),
    (&["neusilber", "alpaka", "alpacca"], &["nickelsilver"]),
    (&["aluminium", "aluminum", "alu", "al"], &["aluminium"]),
    (&["copper", "kupfer", "cu"], &["copper"]),
    (&["tin", "sn"], &["tin"]),
    (&["zinc", "zink", "zn"], &["zinc"]),
    (&["silicon", "silizium", "silicium", "si"], &["silicon"]),
    (&["nickel", "ni"], &["nickel"]),
    (&["ruthenium", "ru"], &["ruthenium"]),
    (&["cobalt", "kobalt", "co"], &["cobalt"]),
    (&["iridium", "ir"], &["iridium"]),
    (&["gallium", "ga"], &["gallium"]),
    (&["germanium", "ge"], &["germanium"]),
    (&["tungsten", "wolfram"], &["tungsten"]),
    (&["rhodium", "rh"], &["rhodium"]),
    (&["steel", "stahl"], &["steel"]),
    (&["iron", "eisen", "fe"], &["iron"]),
    (&["titanium", "titan", "ti"], &["titanium"]),
    (&["deoxidised", "deoxidized", "deox"], &["deoxidised"]),
    (&["weissmetall"], &["white", "metal"]),
    (&["manganese", "mangan", "mn"], &["manganese"]),
];

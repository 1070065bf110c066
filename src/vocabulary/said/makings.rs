//! Words that tell how a thing is made, or what it is, where one list each is enough.

/// Words for fronts that open without anything that stands before them.
pub(super) const WITHOUT_PULLS: &[&str] = &[
    "finger pull",
    "finger-pull",
    "finger groove",
    "handleless",
    "handle-less",
    "without handles",
    "no handles",
    "push to open",
    "push-to-open",
    "push latch",
    "touch latch",
    "j-pull",
    "j pull",
    "gola",
    "grifflos",
    "ohne griffe",
    "sin tirador",
    "uñero",
    "sans poignée",
];

/// Words for what is cut or set to its length where it is fitted.
pub(super) const CUT_TO_LENGTH: &[&str] = &[
    "cut to",
    "cut on site",
    "cut down",
    "stock length",
    "to length",
    "trimmed",
    "adjustable",
    "telescop",
    "extend",
    "extensible",
    "tension",
    "zuschnitt",
    "ausziehbar",
];

/// Words for a curtain of a shower or a tub.
pub(super) const SHOWER_CURTAIN: &[&str] = &[
    "shower curtain",
    "shower rod",
    "bath curtain",
    "tub curtain",
    "cortina de ducha",
    "cortina de baño",
    "duschvorhang",
    "rideau de douche",
];

/// Words for an oven.
pub(super) const OVENS: &[&str] = &["oven", "ovens", "horno", "hornos", "backofen", "ofen", "forno", "four"];

/// Words for a dishwasher.
pub(super) const DISHWASHERS: &[&str] =
    &["dishwasher", "lavavajillas", "geschirrspüler", "spülmaschine", "lave-vaisselle"];

/// Words for bins for waste, and for the cabinet that they are in.
pub(super) const BINS: &[&str] = &[
    "bin",
    "bins",
    "waste",
    "trash",
    "recycling",
    "garbage",
    "rubbish",
    "basura",
    "cubos",
    "müll",
    "abfall",
    "mülltrennung",
];

/// Words for a valve, or its body.
pub(super) const VALVES: &[&str] = &["valve", "body", "válvula", "cuerpo", "einbaukörper", "grundkörper", "ventil"];

/// Words for the body of a valve, which is in the wall.
pub(super) const BODIES: &[&str] = &["body", "cuerpo", "einbaukörper", "grundkörper", "corps"];

/// Words of [`super::Mention::SwitchOfADisposer`].
pub(super) const SWITCH_OF_A_DISPOSER: &[&str] = &[
    "disposer switch",
    "disposer button",
    "disposer push",
    "disposal switch",
    "disposal button",
    "switch for the dispos",
    "button for the dispos",
    "pneumatic switch",
    "pneumatic button",
    "pulsador neumático",
    "interruptor neumático",
    "pneumatischer schalter",
];

/// Words of [`super::Mention::SafetyGlass`].
pub(super) const SAFETY_GLASS_WORDS: &[&str] = &[
    "tempered",
    "temperad",
    "toughen",
    "laminat",
    "safety",
    "templad",
    "laminad",
    "securit",
    "securiz",
    "seguridad",
    "sicherheitsglas",
    "z97",
    "sgcc",
];

/// What is built around a hood: it is of another make, and may burn where the hood does not.
pub(super) const AROUND_A_HOOD: &[&str] = &[
    "surround",
    "clad",
    "casing",
    "boxing",
    "boxed",
    "enclosure",
    "mantel",
    "housing",
    "window",
    "curtain",
    "beam",
    "verkleid",
    "verkleidung",
    "revestid",
    "forrad",
    "panelad",
];

/// Words that give a direction.
pub(super) const DIRECTIONS: &[&str] = &[
    "level",
    "horizontal",
    "upright",
    "vertical",
    "along",
    "across",
    "lengthwise",
    "crosswise",
    "diagonal",
    "pointing",
    "points",
    "toward",
    "towards",
    "up",
    "parallel",
    "perpendicular",
    "lengthways",
    "widthways",
    "crossways",
    "longways",
    "facing",
    "hacia",
    "paralelo",
    "paralela",
    "paralelas",
    "atravesado",
    "längs",
    "quer",
    "hochkant",
    "waagerecht",
    "waagrecht",
    "senkrecht",
    "liegend",
    "stehend",
    "langseite",
    "längsseite",
    "vers",
    "parallèle",
    "perpendiculaire",
];

/// Words for a place where clothes are washed and boots come off, and nothing is cooked.
pub(super) const FOR_LAUNDRY: &[&str] = &[
    "laundry",
    "utility",
    "mudroom",
    "mud room",
    "boot room",
    "lavader",
    "lavander",
    "waschküche",
    "hauswirtschaft",
    "buanderie",
    "bijkeuken",
];

/// Words for a window in the slope of a roof.
pub(super) const ROOF_WINDOWS: &[&str] = &[
    "roof",
    "skylight",
    "dachfenster",
    "dachflächenfenster",
    "claraboya",
    "lucernario",
    "ventana de techo",
    "ventana de tejado",
    "ventana de cubierta",
    "fenêtre de toit",
    "dakraam",
];

/// Words for a frame, beside a toilet: of other things these say nothing of what it hangs on.
pub(super) const FRAMES: &[&str] = &["frame", "frames"];

/// Words for the frame in the wall that a toilet hangs on, and for its tank: no frame of a door, a screen or a mirror.
pub(super) const WALL_FRAMES: &[&str] = &[
    "carrier",
    "wc frame",
    "toilet frame",
    "in-wall frame",
    "in-wall system",
    "in-wall element",
    "in-wall unit",
    "in wall frame",
    "support frame",
    "mounting frame",
    "installation frame",
    "wall-hung frame",
    "frame and tank",
    "frame with tank",
    "in-wall tank",
    "in wall tank",
    "cistern",
    "concealed tank",
    "vorwand",
    "montageelement",
    "wc-element",
    "spülkasten",
    "tragständer",
    "bastidor",
    "cisterna",
    "tanque",
    "bâti",
    "réservoir",
    "inbouwreservoir",
    "telaio",
    "cassetta",
    "sisterne",
];

"""Words that keep hands off a thing, whoever's it is: `do not touch`, `reserved`, `cant have it`."""

from calmlarder.matching.late_patterns import LatePattern

HANDS_OFF = LatePattern(
    r"[,;-]? ?\b(?:(?:hands|paws|fingers|keep|keep your hands) off"
    r"|(?:do not|don'?t|never) (?:touch|steal|use|eat(?! (?:it|them|that|this|much)\b))"
    r"(?! (?:the|any|raw|after|until|till|before|past|yet))"
    r"|(?:do not|don'?t|never) (?:touch|steal) (?:the|my|our) (?=[a-z]+(?: [a-z]+)?$)"
    r"|(?<=[,;(-] )(?:do not|don'?t|never) eat (?:it|them|that|this)"
    r"|(?:i'?m |i am |we'?re )?not touching (?:it|them|that|those|this)"
    r"|not to be (?:eaten|touched|used)|no touching|reserved|spoken for"
    r"|(?:i )?(?:can'?t|cannot|mustn'?t) (?:have|eat) (?:it|them|that|those|this)"
    r"|(?:i'?m )?allergic(?: to (?:it|them|this))?"
    r"|(?:so )?leave (?:it|them|that|those|this)(?: alone| be| there)?(?= ?(?:$|[,;.)]))"
    r"|(?:is |are )?off[ -]limits)\b!*",
    needs=(
        " off", "off limits", "off-limits", "touch", " steal", " use", "leave ", " eat", "reserved", "spoken", " have",
        "allergic",
    ),
)  # fmt: skip

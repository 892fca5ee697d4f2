"""What stands round a recipe: lines with which it is over, what is between its steps, buttons and ways elsewhere."""

import re

from calmlarder.matching.names.words import plain

_LONGEST = 140  # signs of a line that is looked at: a longer one is a sentence of somebody: ours
# Who writes here, what others wrote and said, where else to go, what the law wants said. Of sites in general.
_OVER = re.compile(
    r"(?:(?:this )?page )?last (?:altered|updated|modified|changed|edited)\b.*|you are (?:the )?visitor\b.*"
    r"|©.*|copyright\b.*|"
    r"(?:(?:hello|hi|hiya|hey|welcome)\b[^.?]{0,25}?[\s,!.–—-]+)?(?:i['’]?m|i am|my name is|we['’]?re|we are)"
    r" (?-i:[A-Z])\w+\b.{0,110}"
    r"|(?:(?:hello|hi|hey)\b.{0,25})?welcome(?: to\b.{0,60}|[!.])"
    r"|(?:about|meet) (?:the (?:author|cook|writer|blog|chef|team)|me|us|your host)"
    r"|(?:we|this (?:web)?site|our (?:web)?site) uses? cookies\b.*|cookie (?:policy|settings|preferences)"
    r"|(?:popular|trending|latest|recent|featured|related|most (?:read|popular|loved|viewed))"
    r"(?: (?:now|right now|recipes?|posts?|articles?|stories|today|this week|on the blog|here))*"
    r"|(?:more|other) (?:recipes?|posts?|stories|(?:from|in|like|by) .{1,40}|to (?:read|cook|explore|try)"
    r"|.{1,30} recipes)"
    r"|(?:other |more )?(?:users|readers|people|cooks) (?:who|also)\b.*"
    r"|(?:you (?:may|might)|you['’]ll|readers|people) (?:also )?(?:like|love|enjoy|be interested)\b.{0,60}|up next"
    r"|get (?:(?:our|my|the|new|latest) ){0,3}recipes\b.{0,60}|shop (?:the|this) \w+|report a problem\b.{0,40}"
    r"|(?:newer|older) posts?\b.{0,40}|(?:posted|published|shared) (?:by|on|at)\b.{1,80}|.{1,30} said(?:\.\.\.|…).*"
    r"|browse (?:by|all|our|more)\b.{0,60}|(?:wine|drinks?|beer) (?:match|pairing)\b.{0,60}|search (?:all )?recipes"
    r"|(?:our )?readers['’]? (?:verdict|say|rating)s?\b.{0,60}|(?:try|cook|make|read) (?:this|these) next\b.{0,60}"
    r"|got (?:a |any )?questions?\?.{0,60}"
    r"|(?:keep|kept|next|further) reading\b.{0,20}|what to (?:read|cook) next|goes (?:well|nicely) with"
    r"|(?:the |our |my )?newsletter\b.{0,90}|(?:join|sign up (?:to|for)|subscribe(?: to)?)\b.{0,80}|sign up"
    r"|enter your e-?mail\b.*|your e-?mail(?: address\b.*)?"
    r"|(?:written|words|photos?|pictures?|photograph(?:s|y)|images?)(?: (?:and|&) \w+)?(?: by\b|:).{1,60}"
    r"|recipe (?:by|(?:adapted )?from)\b.{1,60}|adapted from\b.{1,60}|next (?:week|month|lesson|class)\s?:.*"
    r"|\(?\d+\)? (?:thoughts?|responses|repl(?:y|ies)|reviews?|ratings?|comments?)\b.{0,80}"
    r"|(?:readers['’] |reader )?(?:comments?|reviews?|repl(?:y|ies)|ratings?)(?: ?\(?\d*\)?|(?:,| and) .{1,40})"
    r"|leave a (?:comment|reply|review)\b.*|reader interactions|primary sidebar|(?:previous|next) (?:post|recipe)\b.*"
    r"|(?:filed|posted|tagged)\b (?:under|in|with|as)\b.*|(?:tags?|keywords?|categor(?:y|ies)|labels)(?:\s?:.*)?"
    r"|(?:back|return) to (?:the )?(?:list|index|top|recipes?|home|main page)\b.*"
    r"|.{0,60}\blast (?:updated|modified|edited|changed)\b.*|you are visitor\b.*"
    r"|(?:privacy|terms)\b(?: (?:policy|and conditions|of (?:use|service)|& conditions)).*"
    r"|(?:©|copyright\b|all rights).*"
    r"|(?:many )?thank(?:s| you)(?: so much)? for (?:visiting|reading|watching|stopping by)\b.*"
    r"|(?:follow|find) (?:us|me)\b.{0,60}|as an? (?:associate|affiliate)\b.*"
    r"|(?:did you (?:make|try|cook|like|enjoy|love)|tried|loved|made|enjoyed) (?:this|it)\b.{0,80}"
    r"|rate (?:this|it)\b.{0,30}"
    r"|share (?:this|on|it)\b.{0,40}|print (?:this|recipe)\b.{0,20}|related (?:posts?|recipes?|articles?)"
    r"|nutrition(?:al)? (?:values?|info\w*|facts|per)\b.*|(?:> ?)?on .{3,60}\bwrote|sent from my\b.*"
    r"|-+ ?(?:original|forwarded) message\b.*|(?:any )?questions\?.{0,60}"
    r"|(?:<<|«|←|‹).{1,130}|.{1,130}\s(?:>>|»|→|›)",  # ways to the page before and the one behind
    re.IGNORECASE,
)
# Ways to other dishes by their names, in a line as long as they are: `More like this: Cheese pie, Egg curry`.
_WAYS = re.compile(
    r"(?:more like (?:this|these)|if you (?:liked?|loved?) (?:this|it)|related(?: (?:recipes|posts|dishes))?"
    r"|(?:you (?:may|might)|you['’]ll|readers|people) (?:also )?(?:like|love|enjoy)|(?:more|other) (?:recipes|dishes)"
    r"|(?:try|cook|make|read)(?: (?:this|these))? next|see also|up next)\s?[:–—]\s[^.!?]*",
    re.IGNORECASE,
)
_LONGEST_WAYS = 400  # signs: some ten names of dishes, ours
_BUTTONS = frozenset({
    "share", "print", "save", "pin", "email", "e-mail", "tweet", "like", "comment", "reply", "jump", "to", "recipe",
    "subscribe", "menu", "search", "login", "log", "in", "sign", "up", "rate", "copy", "link", "bookmark", "favourite",
    "favorite", "close", "ok", "accept", "decline", "all", "no", "thanks", "fine", "view", "more", "less", "read", "on",
    "the", "top", "follow", "download", "pdf", "shop", "cart", "account", "home",
})  # fmt: skip
_LEAST_BUTTONS = 2  # one alone may be a heading: ours
# A line of a text that was copied from its page with all there is on it.
_BUTTON = re.compile(
    r"(?:save|share|print|pin(?: it)?|tweet|e-?mail|like|rate|jump to|skip to|go to)"
    r"(?: (?:this|the|my|to|a|recipe|recipes|card|page|content|main|video|comments?|friend|favou?rites))*[!.:]?"
    r"|(?:more|you may also|you might also) like(?: this)?:?|related (?:recipes|posts):?|read more|advert(?:isement)?"
    r"|(?:leave|post|write) a (?:comment|reply|review)|(?:\d+ )?(?:comments?|reviews?|ratings?|votes?)"
    r"|\d(?:[.,]\d+)?(?: (?:out of|/) ?5)? (?:stars? )?(?:from|by|based on|\() ?"
    r"\d[\d,.]* (?:ratings?|reviews?|votes?)\)?"
    r"|(?:[1-9]x ?){2,}|(?:home|menu|search|subscribe|log ?in|sign (?:in|up)|newsletter|about(?: us| me)?|contact)"
    r"|(?:we|this site) uses? cookies.{0,80}|accept (?:all )?(?:cookies)?|cook mode.{0,60}"
    r"|keep (?:the )?screen on.{0,40}",
    re.IGNORECASE,
)
# Above a title: the path to the page, and its buttons one by one.
_CRUMBS = re.compile(r"\s[>»›]\s|^[\W\d_]+$")
_ABOVE = frozenset({
    "share", "print", "save", "pin", "jump", "to", "recipe", "home", "menu", "search", "rate", "log", "in", "login",
    "sign", "up", "email", "video", "skip", "content",
})  # fmt: skip
_ROUND = " :*_#|>"
# What a page has between two steps, behind which its steps go on.
_BETWEEN = re.compile(
    r"(?:advertisements?|advert|ads?|sponsored|promoted|paid partnership|win an?)\b.{0,80}"
    r"|(?:watch (?:the |this |our |how\b).{0,40}|(?:the |recipe |how-to )?video(?: (?:recipe|tutorial|guide))?)[:.!]?"
    r"|(?:cook(?:ing)? mode\b|keep (?:your |the )?screen (?:awake|on)\b|prevent your screen\b).{0,60}"
    r"|(?:step[- ]by[- ]step )?(?:step )?(?:photos?|pictures?|images?)(?: (?:below|above))?[:.]?"
    r"|(?:article|story|recipe) continues (?:below|after)\b.{0,40}|scroll (?:down|on|up)\b.{0,60}"
    r"|(?:serves|servings?|yields?|makes|(?:(?:prep|cook|total|active) )?time)(?:\s?:.{0,30})?"
    r"|(?:image|photo|picture) \d+(?: (?:of|/) \d+)?|p\.? ?s\.?[ :,–-].{1,300}",
    re.IGNORECASE,
)
# Above or in a list of ingredients: which measures it shows and how often over.
_SWITCH = re.compile(
    r"(?:scale|servings?|yield|units?|measures?|batch(?: size)?)?[\s:]*(?:(?:½|1/2|\d)x[\s|/·,-]*){2,}"
    r"|(?:(?:us|u\.s\.)(?: customary)?|imperial|american|cups)\s?(?:[-–|/·,]|or|to)?\s?(?:metric|grams?)"
    r"|metric\s?(?:[-–|/·,]|or|to)?\s?(?:(?:us|u\.s\.)(?: customary)?|imperial|american|cups)"
    r"|(?:de)?select all(?: ingredients)?|(?:add|copy) (?:all |ingredients )*(?:to (?:the |my |your )?)?"
    r"(?:(?:shopping )?(?:list|basket|cart)|clipboard)|(?:hide|show) (?:images|photos)",
    re.IGNORECASE,
)


def is_over(line: str) -> bool:
    """Whether a line is of what stands behind a recipe, so that nothing below it is of the recipe."""
    bare = " ".join(line.split()).strip(_ROUND)
    ways = re.split(r"\s[·|•]\s", bare) if len(bare) <= _LONGEST_WAYS else []
    if any(_WAYS.fullmatch(one) or (len(ways) > 1 and _OVER.fullmatch(one)) for one in ways):
        return True
    return (len(bare) <= _LONGEST and _OVER.fullmatch(bare) is not None) or _is_buttons(bare)


def is_between(line: str) -> bool:
    """Whether a line among the steps is none of them: an advertisement, a film, a switch of the page."""
    bare = " ".join(line.split()).strip(_ROUND)
    return _BETWEEN.fullmatch(bare) is not None or is_switch(bare)


def is_switch(line: str) -> bool:
    """Whether a line above or in a list changes how the page shows it."""
    return _SWITCH.fullmatch(" ".join(line.split()).strip(_ROUND)) is not None


def without_buttons(text: str) -> str:
    """A text without the lines that are nothing but a button, a mark or a way elsewhere."""
    return "\n".join(line for line in text.split("\n") if not _BUTTON.fullmatch(line.strip()) or not line.strip())


def is_above(line: str) -> bool:
    """Whether a line above a title, which is plain and without its marks, is none."""
    words = plain(line).split()
    return bool(_CRUMBS.search(line)) or (bool(words) and set(words) <= _ABOVE)


def _is_buttons(bare: str) -> bool:
    words = re.findall(r"[a-z-]+", bare.lower())
    plain = re.fullmatch(r"[A-Za-z\s|·/,-]+", bare) is not None
    return plain and len(words) >= _LEAST_BUTTONS and set(words) <= _BUTTONS and bare[-1:] != "."

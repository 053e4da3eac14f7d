"""Which articles a description names, and whether two descriptions name two: a belt keeper under a belt's number.

Which words name which article is common practice, no source; English, German, French, Spanish and Dutch. A word that
is not in the lists names nothing, so a description in another language contradicts nothing.
"""

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

LONGEST = 3000
"""Nobody names an article in more characters; hostile cells are that long."""

BESIDE: dict[str, str] = {
    "gasket": "gasket gaskets gskt dichtung dichtungen junta juntas empaque pakking pakkingen dichtungssatz dichtsatz"
    " -dichtung -dichtungen -dichtungssatz -dichtsatz",
    "seal": "seal seals simmerring dichtring wellendichtring retenes reten keerring -dichtring",
    "O-ring": "oring orings",
    "keeper": "keeper keepers riemenhalter guidecourroie",
    "cover or cap": "cover covers cap caps lid abdeckung haube deckel kappe couvercle bouchon tapa tapon cubierta"
    " deksel -abdeckung -haube -deckel -kappe",
    "bolt, screw or pin": "bolt bolts screw screws pin pins bolzen schraube schrauben stift vis goupille boulon perno"
    " tornillo tornillos pasador schroef bout -schraube -schrauben -bolzen -stift",
    "nut": "nut nuts mutter muttern ecrou ecrous tuerca tuercas moer -mutter -muttern",
    "washer": "washer washers unterlegscheibe rondelle rondelles arandela arandelas",
    "puller": "puller abzieher extracteur extractor",
    "tool": "wrench spanner socket tool tools werkzeug outil herramienta",
    "guard": "guard guards shield shields protecteur protector -schutz",
    "bowl": "bowl schwimmerkammer cuve",
    "float": "float schwimmer flotteur flotador",
    "spring": "spring springs sprg spr feder federn ressort ressorts resorte muelle veer -feder -federn",
    "bushing": "bushing bushings bush buchse buchsen coussinet casquillo buje -buchse",
    "bracket": "bracket brackets halterung halter soporte -halter -halterung",
    "adapter": "adapter adapters adaptor adaptateur adaptador",
    "knob": "knob knobs knauf pomo",
    "clip or clamp": "clip clips clamp clamps circlip schelle collier abrazadera -schelle",
    "spacer": "spacer spacers distanzhulse entretoise espaciador",
    "label": "decal decals label labels sticker aufkleber autocollant etiqueta",
    "housing": "housing gehause carter carcasa -gehause",
    "pulley": "pulley pulleys pul plly pully sheave poulie polea riemenscheibe -riemenscheibe -rolle",
    "sprocket": "sprocket sprockets kettenrad ritzel pignon pinon",
    "hub": "hub hubs nabe moyeu -nabe",
    "rim": "rim rims felge jante llanta -felge",
    "switch": "switch switches schalter interrupteur interruptor -schalter",
    "solenoid": "solenoid solenoids relay relays magnetschalter relais",
    "rope, cord or cable": "rope ropes cord cords cable cables cbl startseil bowdenzug seilzug kabel"
    " -seilzug -kabel -seil",
    "grip": "grip grips handgriff",
    "case": "case cases pouch sleeve holder hulle etui housse funda -hulle",
    "charger": "charger chargers ladegerat chargeur cargador -ladegerat",
    "mount": "mount mounts",
    "bearing": "bearing bearings brg brng lager kugellager roulement roulements rodamiento rodamientos lagers -lager",
}
"""Articles that belong to another one: the same number and one of these words on one side only is another article."""

ARTICLES: dict[str, str] = {
    **BESIDE,
    "belt": "belt belts vbelt riemen keilriemen courroie courroies correa correas riem -riemen",
    "chain": "chain chains kette ketten chaine chaines cadena cadenas ketting -kette",
    "spark plug": "sparkplug sparkplugs zundkerze bougie bujia",
    "wheel": "wheel wheels rad rader roue roues rueda ruedas wiel",
    "tire": "tire tires tyre tyres reifen pneu neumatico",
    "tube": "tube tubes hose hoses schlauch tuyau durite manguera -schlauch",
    "blade": "blade blades messer lame lames cuchilla cuchillas -messer",
    "skid shoe": "shoe shoes skid skids gleitkufe gleitkufen kufe kufen patin patins patines",
    "filter": "filter filters fltr filt filtre filtres filtro filtros -filter",
    "carburetor": "carburetor carburetors carburettor carb vergaser carburateur carburador",
    "gearbox": "gearbox getriebe reducteur -getriebe",
    "gear": "gear gears zahnrad engrenage engranaje -zahnrad",
    "shaft": "shaft shafts axle axles welle achse arbre essieu eje -welle -achse",
    "starter": "starter starters anlasser demarreur arrancador",
    "battery": "battery batteries batterie bateria accu",
    "muffler": "muffler mufflers silencer auspuff silencieux",
    "pump": "pump pumps pumpe pompe bomba -pumpe",
    "arrestor": "arrestor arrester sparkarrestor",
    "impeller": "impeller impellers fan fans lufter ventilador ventilateur",
    "handle": "handle handles griff poignee manija",
    "tank": "tank tanks behalter reservoir deposito -tank -behalter",
    "": "-einsatz -ersatz -ansatz -absatz -durchmesser",
}
"""Every article with its words, folded; a word with a dash before it is the end of a compound.

The blank one holds ends that look like another's and name nothing: 'Filtereinsatz' is no kit.
"""

ALONE = {"idler": "pulley"}
"""What a word names where no other article is named: an idler bearing is no pulley."""

_WORDS = {word: article for article, words in ARTICLES.items() for word in words.split() if word[0] != "-"}
_ENDS = sorted(
    ((word[1:], article) for article, words in ARTICLES.items() for word in words.split() if word[0] == "-"),
    key=lambda one: -len(one[0]),
)
LONGEST_WORD = 40
LEAST_BEFORE = 3
"""So many characters stand before the end of a compound at least."""

_WITH = r"with|without|incl|including|includes|inkl|less|excl|mit|ohne|avec|sans|con|sin|met|zonder"
_FOR = r"for|fits|fuer|fur|pour|para|voor|passend|passt|used on|used with"
_ASIDE = re.compile(
    rf"(?<![^\W_])(?:(?:{_WITH}|{_FOR})(?![^\W_])|w/)[^,;()]*"
    r"|\b(?:gasket|tapered|conical) seat\b|\bbolt[ -]on\b|\bsprocket nose\b|\bcable management\b"
    r"|\b(?:retractable|extra long|detachable) cord\b"
    r"|\b\w+ (?:not|nicht|non|no) (?:included|enthalten|compris\w*|incluido)"
    r"|\b(?:aramid|polyester|kevlar|fabric|cloth|wrapped|cotton|rubber|neoprene|bare|raw|tensile) (?:cord|cover)\w*"
    r"|\b(?:cord|cover) (?:aramid|polyester|kevlar|fabric|cloth|wrapped|rubber)\b"
    r"|\bab lager\b|\b(?:gear|crank|chain|belt)[ -]?case\b"
    r"|\bspring (?=pin|washer|clip|steel|loaded)|\bcap (?=screw|bolt|nut)|\b(?:lock|cap|wing) (?=nut)"
)
"""What is with it, what it is for, what it is made of: none of them says what it is."""
_MADE_OF = re.compile(
    r"\b(?:plastic|steel|metal|glass|poly|rubber|aluminum|welded|cast|ball bearing)"
    r" (?:housing|case|cover|lid|cap|rim|hub|guard|grip|bushing|spring)s?\b"
)
"""'Friction wheel, steel hub': one of its traits, unless nothing else is named."""
_OF_A_BEARING = re.compile(r"\b(?:\d|two|double|both|rubber|contact|metal|steel|dust) ?(?:side )?(?:seal|shield)\w*")
_SPARK_PLUG = re.compile(r"\bspark (plug|arrest[eo]r)")
_JOINT = re.compile(
    r"\bjoints? (?=de |des |du |d'|plat|torique|carbu|culasse|carter|cuve|admission|echappement|couvercle|cache|bride)"
)
"""The French gasket; alone the word is English too."""
_WORD = re.compile(r"[^\W\d_]+")


@lru_cache(maxsize=65536)
def named(description: str) -> tuple[frozenset[str], frozenset[str]]:
    """The articles a description names, and its words of three letters and more; what it is with or for is left out.

    Kits and sets are no article here: every description says them somewhere else, see `said.OTHER_THING`.
    """
    text = _folded(description[:LONGEST])
    text = _SPARK_PLUG.sub(r"spark\1", text.replace("v-belt", "vbelt").replace("o-ring", "oring"))
    text = _ASIDE.sub(" ", _JOINT.sub("gasket ", text))
    if "bearing" in text:
        text = _OF_A_BEARING.sub(" ", text)
    without = frozenset(_articles(_WORD.findall(_MADE_OF.sub(" ", text))))
    words = _WORD.findall(text)
    alone = frozenset(ALONE[word] for word in words if word in ALONE)
    return without or frozenset(_articles(words)) or alone, frozenset(word for word in words if len(word) > 2)


def another_article(description: str, ours: str) -> str:
    """Why the two descriptions name two articles, in words; blank where they may name one, or one says nothing known.

    Two articles: none is shared; or the row names one of `BESIDE` which ours does not, and ours is understood too, by
    an article of its own or by a word that both share. What the row does not name is for `not_named`.
    """
    (its, its_words), (our, our_words) = named(description), named(ours)
    if its and our and its.isdisjoint(our):
        return f"by its words another article: {_listed(its)}, where ours is {_listed(our)}"
    if (beside := (its - our) & BESIDE.keys()) and (our or its_words & our_words):
        return f"by its words another article: it names {_listed(beside)}, which ours does not"
    return ""


def not_named(description: str, ours: str) -> str:
    """What of `BESIDE` ours is and the row, which names some article, does not name; in words, blank where nothing.

    It may be the larger article under the number of what belongs to it, or words that nobody here knows: a question.
    """
    its, our = named(description)[0], named(ours)[0]
    if its.isdisjoint(our) or not (beside := (our - its) & BESIDE.keys()):
        return ""
    return f"ours is {_listed(beside)}, which its words do not name: whether they mean it is not known"


def _articles(words: list[str]) -> Iterator[str]:
    for word in words:
        if found := _WORDS.get(word):
            yield found
        elif len(word) <= LONGEST_WORD:
            yield from _of_compound(word)


def _of_compound(word: str) -> Iterator[str]:
    """'vergaserdichtung' names a gasket and a carburetor."""
    for end, article in _ENDS:
        if word.endswith(end) and (not article or len(word) >= len(end) + LEAST_BEFORE):
            if article:
                yield article
                before = word.removesuffix(end)
                yield from _articles([before if before in _WORDS else before.removesuffix("s")])
            return


def _folded(text: str) -> str:
    """Lower case without accents: 'Zündkerze' is 'zundkerze'."""
    if text.isascii():
        return text.lower()
    plain = unicodedata.normalize("NFKD", text.casefold())
    return "".join(character for character in plain if not unicodedata.combining(character))


def _listed(articles: frozenset[str]) -> str:
    return ", ".join(sorted(articles))

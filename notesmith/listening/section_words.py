"""The words that speak for one kind of section rather than another, by what they show; an underscore joins a phrase."""

SPEAKING: dict[str, str] = {
    "greeting": "hello hi hey welcome morning evening afternoon everyone everybody folks channel introduce",
    "plan": "today tonight plan session lined lineup going_to_do we_'re_doing we_'re_going gonna rules deal "
            "we_'ve_got",
    "vessel": "cup cups glass glasses mug mugs bowl bowls pot kettle scale scales tray filter basket spoon spoons "
              "bottle bottles jar jars lid lids saucer decanter pitcher jug timer paper cone tape taped covered "
              "table",
    "making": "grams gram gramme millilitres ml mils mil degrees celsius fahrenheit minutes minute seconds ounces "
              "litre brew brewed brewing steep steeped steeping infuse infused infusion water boil boiled boiling "
              "pour poured pouring rinse rinsed grind ground grinder ratio recipe temperature dose weighed weigh tap "
              "filtered method setup rested rest",
    "alike": "same each all both every",
    "looking": "look looks looking colour color coloured dark pale clear cloudy leaf leaves liquor foam head crema "
               "rim legs light surface crumb rind brown amber green yellow tilt hold window deep bright",
    "smelling": "nose smell smells smelling sniff sniffing aroma nosing scent whiff perfume swirl",
    "tasting": "taste tastes tasting sip sipping mouth palate tongue swallow swallowed bite chew slurp cheers throat "
               "drink mm mmm ooh oh oof finish aftertaste gums cheeks",
    "story": "told remember remembered years year ago once used_to last_year grew reminds story married born died "
             "lived moved",
    "people": "he she they him her his them dad mum mother father grandmother grandad nan wife husband brother "
              "sister uncle aunt friend neighbour neighbor boss man woman kids daughter son people",
    "trade": "farm garden estate village region grown harvest harvested picked picking farmers cultivar variety bush "
             "trees hectares metres altitude factory roaster brewery distillery winery vineyard dairy press "
             "fermented aged history century tradition called means comes_from made_from",
    "paying": "price pound pounds euro euros dollar dollars quid rand cost costs paid per cheap expensive pence "
              "cents",
    "promoting": "sponsor sponsored sponsors sponsoring sponsorship code checkout discount link percent_off "
                 "brought_to patreon subscribers membership members merch newsletter ad advert offer offers "
                 "supporting fund tip_jar delivery free_shipping",
    "thanking": "thanks thank",
    "ranking": "winner wins win won rank ranking favourite favorite place prefer order verdict overall top bottom "
               "points scores pick choose vote third_place second_place first_place in_order final out_of_ten "
               "is_first is_last",
    "choosing": "i_'d buy again keep recommend worth would_buy",
    "setting beside": "than side_by_side beside compare compared comparing versus against difference similar same "
                      "more less whereas both_of between_them next_to go_back going_back back_to cooled now_it",
    "revealing": "reveal envelope slip sealed unwrap unwrapping flip peel peeled identity guess guessed guesses lift "
                 "turn_over turns_out answers opened open i_knew no_way moment_of",
    "reading": "says description label leaflet card website packet blurb quote read_you reads notes_of expect "
               "it_says read_it promises described",
    "i": "i",
    "you": "you",
    "it is": "it_'s it_is",
    "leaving": "bye goodbye watching listening next_week see_you subscribe comments later soon take_care cheerio "
               "sign done next_time until cheers button",
}  # fmt: skip


WORDS = {sign: [p for p in phrases.split() if "_" not in p] for sign, phrases in SPEAKING.items()}
PHRASES = {sign: [p.split("_") for p in phrases.split() if "_" in p] for sign, phrases in SPEAKING.items()}
OPENERS = frozenset(
    "okay ok right so now alright anyway well next first second third final finally last back let's lets".split()
)
MID_OPENERS = frozenset("okay ok alright anyway right so now well".split())  # these begin a breath wherever they stand
GOING_ON = frozenset("and but because it or which that then 's".split())
AT_ONCE = {
    sign: [phrase.replace("_", " ") for phrase in SPEAKING[sign].split()]
    for sign in "looking smelling tasting ranking reading promoting leaving revealing thanking".split()
}

namespace OilCondition.Charts;

/// <summary>The German of every phrase, and of the names that the library has in English. The phrases here are all that there are.</summary>
internal static class GermanWords
{
    public static IReadOnlyDictionary<string, string> Phrases { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            // Everywhere.
            ["date, UTC{0}"] = "Datum, UTC{0}",
            ["{0}: {1}"] = "{0}: {1}",
            ["{0}; {1}"] = "{0}; {1}",
            ["No readings."] = "Keine Messwerte.",
            ["normal"] = "normal",
            ["alert"] = "Warnung",
            ["alarm"] = "Alarm",
            ["not determined"] = "nicht bestimmt",
            ["{0}: less than (<)"] = "{0}: kleiner als (<)",
            ["{0}: more than (>)"] = "{0}: größer als (>)",

            // When something is reached.
            ["Reached {0}."] = "Erreicht am {0}.",
            ["Completion expected {0}, between {1} and {2}."] = "Abschluss erwartet am {0}, zwischen {1} und {2}.",
            ["Completion not before {0}."] = "Abschluss nicht vor {0}.",
            ["The target is not reached on this course."] = "Das Ziel wird auf diesem Weg nicht erreicht.",
            ["The readings do not tell yet when it is completed."] =
                "Die Messwerte sagen noch nicht, wann sie abgeschlossen ist.",

            // Trend.
            ["reading"] = "Messwert",
            ["sensor"] = "Sensor",
            ["earlier oil, or before a treatment"] = "früheres Öl oder vor einer Behandlung",
            ["set aside"] = "nicht gewertet",
            ["trend, rising"] = "Trend, steigend",
            ["trend, falling"] = "Trend, fallend",
            ["forecast: dates at which the limit is passed (10 to 90 %)"] =
                "Vorhersage: Tage, an denen der Grenzwert überschritten wird (10 bis 90 %)",
            ["forecast: limit passed from the earliest date (10 %) on"] =
                "Vorhersage: Grenzwert ab dem frühesten Tag (10 %) überschritten",
            ["forecast, 50 %"] = "Vorhersage, 50 %",
            ["now {0}"] = "heute {0}",
            ["oil change"] = "Ölwechsel",
            ["top-up"] = "Nachfüllung",
            ["treatment"] = "Behandlung",
            ["alarm above {0}"] = "Alarm über {0}",
            ["alarm below {0}"] = "Alarm unter {0}",
            ["alert above {0}"] = "Warnung über {0}",
            ["alert below {0}"] = "Warnung unter {0}",
            ["{0}, by own history"] = "{0}, aus eigener Geschichte",
            ["{0} on {1}: {2}; {3}."] = "{0} am {1}: {2}; {3}.",
            ["No reading of this oil; {0}."] = "Kein Messwert dieses Öls; {0}.",
            ["Dilution by top-ups is taken out of the readings."] =
                "Die Verdünnung durch Nachfüllungen ist aus den Messwerten herausgerechnet.",
            ["Readings of 0 stand at the foot of the scale."] = "Messwerte von 0 stehen am Fuß der Skala.",
            ["sudden change from about {0} to {1}, to be confirmed ({2} readings)"] =
                "sprunghaft von etwa {0} auf {1}, noch zu bestätigen ({2} Messwerte)",
            ["changed at once from about {0} to {1} ({2} readings)"] =
                "auf einmal von etwa {0} auf {1} geändert ({2} Messwerte)",
            ["rising, {0} ({1} readings)"] = "steigend, {0} ({1} Messwerte)",
            ["falling, {0} ({1} readings)"] = "fallend, {0} ({1} Messwerte)",
            ["no even trend ({0} readings)"] = "kein stetiger Trend ({0} Messwerte)",
            ["too few readings for a trend ({0})"] = "zu wenige Messwerte für einen Trend ({0})",
            ["{0} in 30 days"] = "{0} in 30 Tagen",
            ["factor {0} in 30 days"] = "Faktor {0} in 30 Tagen",
            ["{0} is passed by {1} in one case of ten, by {2} in five, by {3} in nine."] =
                "{0} wird bis {1} in einem von zehn Fällen überschritten, bis {2} in fünf, bis {3} in neun.",
            ["{0} is passed by {1} in one case of ten; no latest date can be given."] =
                "{0} wird bis {1} in einem von zehn Fällen überschritten; ein spätester Tag lässt sich nicht angeben.",
            ["{0} is not reached: make-up holds the level at {1}."] = "{0} wird nicht erreicht: Nachfüllen hält den Wert bei {1}.",
            ["{0} is passed within {1} years in less than one case of ten."] =
                "{0} wird binnen {1} Jahren in weniger als einem von zehn Fällen überschritten.",
            ["{0} is passed already."] = "{0} ist bereits überschritten.",
            ["{0}: no forecast, {1} of {2} readings."] = "{0}: keine Vorhersage, {1} von {2} Messwerten",
            ["The alarm figure {0}"] = "Der Alarmwert {0}",
            ["The alert figure {0}"] = "Der Warnwert {0}",
            ["limit passed in 10, 50 and 90 % of cases"] = "Grenzwert in 10, 50 und 90 % der Fälle überschritten",

            // Saturation.
            ["{0}: water that the oil holds"] = "{0}: Wasser, das das Öl löst",
            ["No saturation curve of this oil."] = "Keine Sättigungskurve dieses Öls.",
            ["oil temperature"] = "Öltemperatur",
            ["water"] = "Wasser",
            ["all water {0}"] = "alles Wasser {0}",
            ["running {0}"] = "Betrieb {0}",
            ["standstill {0}"] = "Stillstand {0}",
            ["saturation: all that the oil holds dissolved"] = "Sättigung: so viel löst das Öl",
            ["extrapolated"] = "extrapoliert",
            ["band of the curve, {0} %"] = "Vertrauensband der Kurve, {0} %",
            ["drops out on cooling: {0}"] = "fällt beim Abkühlen aus: {0}",
            ["measured saturation"] = "gemessene Sättigung",
            ["water dissolved, running and at standstill"] = "gelöstes Wasser, im Betrieb und im Stillstand",
            ["The oil holds {0} at {1} running and {2} at {3} standstill."] =
                "Das Öl löst {0} bei {1} im Betrieb und {2} bei {3} im Stillstand.",
            ["Its water content is not known."] = "Sein Wassergehalt ist nicht bekannt.",
            ["Of {0} of water {1} is free already when it runs."] =
                "Von {0} Wasser sind {1} schon im Betrieb frei.",
            ["With {0} of water, {1} drops out on cooling."] = "Bei {0} Wasser fallen beim Abkühlen {1} aus.",
            ["With {0} of water, none drops out on cooling."] = "Bei {0} Wasser fällt beim Abkühlen keines aus.",
            ["Water separates below {0}."] = "Unter {0} scheidet sich Wasser ab.",
            ["The curve is extrapolated there."] = "Die Kurve ist dort extrapoliert.",

            // Cleanup.
            ["{0}: cleanup"] = "{0}: Ölpflege",
            ["No treatment is under way."] = "Es läuft keine Behandlung.",
            ["titration"] = "Titration",
            ["sample"] = "Probe",
            ["{0}: before the fit"] = "{0}: vor der Anpassung",
            ["fitted curve"] = "angepasste Kurve",
            ["fitted curve, ahead"] = "angepasste Kurve, voraus",
            ["target {0}"] = "Ziel {0}",
            ["latest {0}"] = "zuletzt {0}",
            ["expected {0}"] = "erwartet {0}",
            ["earliest"] = "frühestens",
            ["at the latest"] = "spätestens",
            ["reached {0}"] = "erreicht {0}",
            ["{0} at {1}, {2}."] = "{0} am {1}, {2}.",
            ["Target {0}, held for {1} h."] = "Ziel {0}, {1} h lang gehalten.",
            ["Sensor and samples contradict each other."] = "Sensor und Proben widersprechen einander.",
            ["at target"] = "am Ziel",
            ["holding"] = "hält das Ziel",
            ["back above the target"] = "wieder über dem Ziel",
            ["warming up"] = "Aufwärmen",
            ["no readings yet"] = "noch keine Messwerte",
            ["stalled"] = "steht still",
            ["free water leaving"] = "freies Wasser geht ab",
            ["falling"] = "fallend",

            // Cleanliness.
            ["{0}: cleanliness"] = "{0}: Reinheit",
            ["No particle counts."] = "Keine Partikelzählung.",
            ["particles per mL, cumulative"] = "Partikel je mL, kumulativ",
            ["what the scale number allows for"] = "was die Ordnungszahl zulässt",
            ["counted"] = "gezählt",
            ["Counts of 0 stand at the foot of the scale."] = "Zählungen von 0 stehen am Fuß der Skala.",
            ["not to be exceeded"] = "nicht zu überschreiten",
            ["scale number {0}"] = "Ordnungszahl {0}",
            ["ISO 4406 {0}."] = "ISO 4406 {0}.",
            ["ISO 4406 {0} on {1}."] = "ISO 4406 {0} am {1}.",
            ["Asked for: {0}; not exceeded at any size that was counted."] =
                "Gefordert: {0}; bei keiner gezählten Größe überschritten.",
            ["Asked for: {0}; exceeded at {1}."] = "Gefordert: {0}; überschritten bei {1}.",

            // Control charts.
            ["single readings"] = "Einzelwerte",
            ["weighted moving average"] = "gewichteter gleitender Mittelwert",
            ["cumulative sums"] = "kumulierte Summen",
            ["control limits"] = "Eingriffsgrenzen",
            ["centre {0}"] = "Mittellinie {0}",
            ["limit {0}"] = "Grenze {0}",
            ["sum above the target"] = "Summe über dem Sollwert",
            ["sum below the target, drawn downwards"] = "Summe unter dem Sollwert, nach unten gezeichnet",
            ["signal above {0}"] = "Signal über {0}",
            ["signal below {0}"] = "Signal unter {0}",
            ["signal"] = "Signal",
            ["Control chart: {0}."] = "Regelkarte: {0}.",
            ["Signals: none in {0}."] = "Signale: keines in {0}.",
            ["Signals: {0} of {1}, the first on {2}."] = "Signale: {0} von {1}, das erste am {2}.",
            ["{0} readings that are only bounds (< or >) are left out."] =
                "{0} Messwerte, die nur Schranken sind (< oder >), sind weggelassen.",

            // Options.
            ["{0}: ways to treat ({1}), hours"] = "{0}: Behandlungswege ({1}), Stunden",
            ["{0}: ways to treat ({1}), cost"] = "{0}: Behandlungswege ({1}), Kosten",
            ["No options to compare."] = "Keine Wege zu vergleichen.",
            ["hours from its begin until done"] = "Stunden vom Beginn bis zum Abschluss",
            ["cost, {0}"] = "Kosten, {0}",
            ["recommended"] = "empfohlen",
            ["possible"] = "möglich",
            ["ruled out"] = "ausgeschlossen",
            ["one to nine cases in ten"] = "ein bis neun von zehn Fällen",
            ["wait until the next outage"] = "bis zum nächsten Stillstand warten",
            ["{0} ({1} to {2})"] = "{0} ({1} bis {2})",
            ["done {0}"] = "fertig {0}",
            ["recommended: {0}"] = "empfohlen: {0}",
            ["at least {0}"] = "mindestens {0}",
            ["meets the target"] = "erreicht das Ziel",
            ["meets the target late"] = "erreicht das Ziel spät",
            ["not sure"] = "unsicher",
            ["nothing is done"] = "es geschieht nichts",
            ["does not reach the target"] = "erreicht das Ziel nicht",
            ["too little in stock"] = "zu wenig am Lager",
            ["outage too short"] = "Stillstand zu kurz",
            ["not enough power"] = "zu wenig Leistung",
            ["cannot be connected"] = "nicht anschließbar",
            ["To be done by {0}."] = "Zu erledigen bis {0}.",
            ["Recommended: {0}, {1}."] = "Empfohlen: {0}, {1}.",
            ["Nothing at hand does it."] = "Nichts Vorhandenes leistet es.",
            ["Done by {0} in nine cases of ten."] = "In neun von zehn Fällen bis {0} erledigt.",
            ["The makers of machine, oil and unit, local codes and licensed people decide how it is done."] =
                "Wie es getan wird, bestimmen die Hersteller von Maschine, Öl und Gerät, örtliche Vorschriften und befugte Fachleute.",

            // Schedule.
            ["No visits."] = "Keine Einsätze.",
            ["travel"] = "Weg",
            ["waiting"] = "Warten",
            ["connecting, heating up, disconnecting"] = "Anschließen, Aufheizen, Abnehmen",
            ["due"] = "fällig",
            ["due {0}, {1} h late"] = "fällig {0}, {1} h zu spät",
            ["due {0}, {1} h to spare"] = "fällig {0}, {1} h Spielraum",
            ["Visits: {0}, from {1} to {2}; late: {3}."] = "Einsätze: {0}, von {1} bis {2}; zu spät: {3}.",
            ["Left out: {0}."] = "Weggelassen: {0}.",
        };

    public static IReadOnlyDictionary<string, string> Names { get; } =
        new Dictionary<string, string>(StringComparer.Ordinal)
        {
            // Measurands.
            ["water content"] = "Wassergehalt",
            ["relative saturation"] = "relative Sättigung",
            ["oil temperature"] = "Öltemperatur",
            ["oil hours"] = "Ölstunden",
            ["viscosity at 40 °C"] = "Viskosität bei 40 °C",
            ["viscosity at 100 °C"] = "Viskosität bei 100 °C",
            ["viscosity index"] = "Viskositätsindex",
            ["density at 15 °C"] = "Dichte bei 15 °C",
            ["acid number"] = "Säurezahl",
            ["base number"] = "Basenzahl",
            ["antioxidant"] = "Antioxidans",
            ["membrane patch colour"] = "Membranfarbe",
            ["oxidation"] = "Oxidation",
            ["flash point"] = "Flammpunkt",
            ["interfacial tension"] = "Grenzflächenspannung",
            ["breakdown voltage"] = "Durchschlagspannung",
            ["per mL"] = "je mL",

            // Kinds of treatment, and what they are for.
            ["settling and draining"] = "Absetzen und Ablassen",
            ["centrifuge"] = "Zentrifuge",
            ["coalescer"] = "Koaleszer",
            ["water absorbing elements"] = "wasserbindende Elemente",
            ["vacuum dehydration"] = "Vakuumtrocknung",
            ["head space purge"] = "Spülung des Gasraums",
            ["fine filtration"] = "Feinfiltration",
            ["drain and refill"] = "Ölwechsel",
            ["water"] = "Wasser",
            ["dirt"] = "Schmutz",
            ["wear"] = "Verschleiß",
            ["oil ageing"] = "Ölalterung",
            ["varnish"] = "Ablagerungen",
            ["oil identity"] = "Ölsorte",
        };
}

using OilCondition.Limits;
using OilCondition.Text;

namespace OilCondition;

/// <summary>The limits for one kind of machine.</summary>
public sealed class LimitSet
{
    /// <summary>A limit set.</summary>
    /// <param name="name">What it is for.</param>
    /// <param name="limits">The limits, in the order in which they are to be shown.</param>
    /// <param name="note">What people should know of it; empty for nothing.</param>
    public LimitSet(string name, IEnumerable<Limit> limits, string note = "")
    {
        Name = Guard.NotBlank(name);
        Limits = [.. Guard.NotNull(limits)];
        ByMeasurand = [.. Limits.GroupBy(limit => limit.Measurand).Select(same => same.ToArray())];
        Note = Guard.NotNull(note);
    }

    /// <summary>What it is for.</summary>
    public string Name { get; }

    /// <summary>The limits, in the order in which they are to be shown.</summary>
    public IReadOnlyList<Limit> Limits { get; }

    /// <summary>The limits of each measurand, in the order in which measurands first come.</summary>
    internal IReadOnlyList<Limit[]> ByMeasurand { get; }

    /// <summary>What people should know of it; empty for nothing.</summary>
    public string Note { get; }

    /// <summary>Fills in the limits of kind <see cref="LimitKind.Fleet"/> from the readings of many machines.</summary>
    /// <remarks>
    /// <para>
    /// Each oil charge of each machine counts once, with its latest reading: readings of one charge are alike, and a machine that is sampled weekly
    /// must not outvote those that are sampled twice a year. The figure is the percentile p of these readings by rank p (n + 1): of one more
    /// charge a share of 1 − p lies beyond it, whatever the distribution (the idea of ASTM D7720, scope 1.3: values at chosen percentages of the
    /// sorted cumulative distribution, which need no normal shape). Suspect samples do not count.
    /// </para>
    /// <para>
    /// A reading of <c>&lt;10</c> ranks anywhere from the bottom up to 10, one of <c>&gt;10</c> anywhere from 10 on. A percentile that such readings leave
    /// open is refused, with <see cref="LimitReason.FleetOnlyBounded"/>; one that is the same wherever they lie is given.
    /// </para>
    /// <para>
    /// Sample-size rule, ours: a percentile is refused when not even the most extreme reading lies beyond it with 90 % confidence, that is
    /// for fewer than ln(0.1) / ln(p) charges: 22 for the 90th, 45 for the 95th, 114 for the 98th. Each figure is judged by itself: a fleet may give
    /// the alert and not the alarm, and <see cref="Limit.MissingFigures"/> says what the alarm would take. A limit of which no figure is given stays
    /// of kind fleet, and is not determined.
    /// </para>
    /// </remarks>
    /// <param name="fleet">Histories of machines of one kind, with oils of one kind.</param>
    /// <returns>The set with absolute figures, each with the fleet as its source, in place of the percentiles.</returns>
    public LimitSet WithFleet(IReadOnlyList<OilHistory> fleet)
    {
        Guard.NotNull(fleet);
        return new LimitSet(Name, Limits.Select(limit => FleetLimit.Resolve(limit, fleet)), Note);
    }

    /// <summary>A set to start from: every figure with its source class.</summary>
    /// <remarks>
    /// Starting points, not rules: the limits of the makers of machine and oil come first, then statistics of your own. No figure claims to follow
    /// a standard that was not seen: such figures are marked 'from memory'. Fire-resistant fluids and engine oils are left out, because
    /// the only public figures found come from one unnamed maker, laboratory or forum.
    /// </remarks>
    /// <param name="equipment">The kind of equipment.</param>
    /// <returns>The limit set.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not one of the enumeration.</exception>
    public static LimitSet Starter(StarterEquipment equipment) => Parse(StarterJson(equipment));

    /// <summary>The text of a set to start from, to be saved and edited.</summary>
    /// <param name="equipment">The kind of equipment.</param>
    /// <returns>JSON as <see cref="Parse"/> reads it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The kind is not one of the enumeration.</exception>
    /// <example>
    /// <code>
    /// File.WriteAllText("turbine.json", LimitSet.StarterJson(StarterEquipment.Turbine)); // edit, then
    /// var limits = LimitSet.Parse(File.ReadAllText("turbine.json"));
    /// </code>
    /// </example>
    public static string StarterJson(StarterEquipment equipment)
    {
        var name = equipment switch
        {
            StarterEquipment.Turbine => "turbine",
            StarterEquipment.Hydraulic => "hydraulic",
            StarterEquipment.Gear => "gear",
            StarterEquipment.Circulating => "circulating",
            StarterEquipment.InsulatingAbove170Kilovolt => "insulating-above-170kv",
            StarterEquipment.Insulating72To170Kilovolt => "insulating-72-to-170kv",
            StarterEquipment.InsulatingUpTo72Kilovolt => "insulating-up-to-72kv",
            _ => throw new ArgumentOutOfRangeException(nameof(equipment), equipment, "Not a kind of equipment."),
        };
        using var stream =
            typeof(LimitSet).Assembly.GetManifestResourceStream($"starter-limits/{name}.json")
            ?? throw new InvalidOperationException($"The starting limits '{name}' are missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads a limit set from JSON.</summary>
    /// <remarks>
    /// <c>{ "name": "…", "limits": [ { "measurand": "water-content", "kind": "absolute", "unit": "mg/kg",
    /// "upper": { "alert": 200, "alarm": 500 }, "source": { "kind": "common-practice", "text": "…" } } ] }</c>.
    /// Kinds: absolute, change-from-new, percent-change-from-new, rate-of-change (with <c>"perDays": 30</c> or
    /// <c>"perOilHours": 1000</c>), own-history and fleet (percentages). A limit may have a <c>"deadBand"</c> (in the limit's unit;
    /// beside percentages in the measurand's), <c>"confirmations"</c> and a <c>"note"</c>. Units as in <see cref="Measurand.TryConvert"/>; particle limits may be
    /// given in iso-4406 scale numbers. What contradicts itself is refused: a lower limit above an upper one, an alert beyond its alarm, a
    /// dead band in which no reading could come back, a figure or a field that is there twice. All faults are reported together.
    /// </remarks>
    /// <param name="json">The text.</param>
    /// <param name="catalog">The measurands that may be named; null for the built-in ones.</param>
    /// <returns>The limit set.</returns>
    /// <exception cref="FormatException">The text is not a limit set; the message lists every fault with its place.</exception>
    public static LimitSet Parse(string json, MeasurandCatalog? catalog = null) =>
        LimitSetReader.Read(Guard.NotNull(json), catalog ?? MeasurandCatalog.BuiltIn);

    /// <summary>The limit set as JSON, each figure to the last digit and in the unit of its measurand, with sources and notes.</summary>
    /// <returns>JSON as <see cref="Parse"/> reads it, the same bytes for the same set.</returns>
    public string ToJson() => LimitSetJson.Of(this).ToString();

    /// <summary>Writes the document of <see cref="ToJson"/> in UTF-8 on one line, so that a file or a queue of many has one a line.</summary>
    /// <param name="stream">Where to; it is written to at once, line end and all, and stays open.</param>
    public void WriteJson(Stream stream) => LimitSetJson.Of(this).WriteTo(stream);

    /// <summary>Name and number of limits.</summary>
    /// <returns>For example <c>Turbine oil, starting points: 13 limits</c>.</returns>
    public override string ToString() => $"{Name}: {Limits.Count} limits";
}

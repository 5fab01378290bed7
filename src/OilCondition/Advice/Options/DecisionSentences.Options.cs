using OilCondition.Cleanup;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <content>What is said of a way to treat an oil: what it reaches, why it does not, what makes it doubtful, what it would take.</content>
public static partial class DecisionSentences
{
    /// <summary>What people call an option.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="option">The option.</param>
    /// <returns>The names of its equipment, as the station file has them.</returns>
    public static string Name(this Sentences say, TreatmentOption option) => Guard.NotNull(option).NameWords(say);

    /// <summary>An option in one line.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="option">The option.</param>
    /// <returns>For example <c>HP-VDU mobile unit: meets the target in 97 % of the cases, in 14 h (11 to 19)</c>.</returns>
    public static string Of(this Sentences say, TreatmentOption option) =>
        Guard.NotNull(option).Verdict == OptionVerdict.Waits ? $"{say.Name(option)}: {say.RuledOut(option)}"
        : option.RuledOutWords is null ? $"{option.Id} {say.Name(option)}: {say.Outcome(option)}"
        : say.Say("option.ruled-out", ("id", option.Id), ("name", say.Name(option)), ("why", say.RuledOut(option)));

    /// <summary>What rules an option out, with figures.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="option">The option.</param>
    /// <returns>A phrase without a full stop; empty where nothing does.</returns>
    internal static string RuledOut(this Sentences say, TreatmentOption option) =>
        Guard.NotNull(option).RuledOutWords?.Invoke(say) ?? "";

    /// <summary>The plant's own run by which an option is planned, with what its unit removed there.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="option">The option.</param>
    /// <returns>A phrase without a full stop; empty where it is planned by its nameplate alone.</returns>
    internal static string Experience(this Sentences say, TreatmentOption option) =>
        Guard.NotNull(option).ExperienceWords?.Invoke(say) ?? "";

    /// <summary>Why an option is ruled out, where its floor is, when the trouble is back, and what makes it doubtful.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="option">The option.</param>
    /// <returns>Phrases without full stops.</returns>
    public static IReadOnlyList<string> Remarks(this Sentences say, TreatmentOption option)
    {
        return [.. All(Guard.NotNull(option))];

        IEnumerable<string> All(TreatmentOption option)
        {
            if (option.RuledOutWords is not null)
            {
                yield return say.RuledOut(option);
            }

            if (option.Floor is { } floor)
            {
                // Below that no titration tells one floor from another.
                yield return say.Say(
                    floor.PartsPerMillion < 1 ? "option.floor-below" : "option.floor",
                    ("floor", say.Content(Math.Max(1, floor.PartsPerMillion)))
                );
            }

            if (!option.IsPossible || option.Verdict == OptionVerdict.Waits)
            {
                yield break;
            }

            if (option.Outage is { } outage)
            {
                yield return say.Say("option.in-outage", ("outage", outage.Name));
            }

            if (option.Terms is { IsHired: true } terms)
            {
                yield return say.Hired(terms);
            }

            if (
                option is { Cost: null, Assessment: { } used }
                && string.Join(", ", say.Uses(used)) is { Length: > 0 } uses
            )
            {
                yield return say.Say("option.uses", ("uses", uses));
            }

            if (option.ExperienceWords is not null)
            {
                yield return say.Say("option.planned", ("experience", say.Experience(option)));
            }

            if (option.Rebound is { } back)
            {
                yield return say.Back(back);
            }

            if (option.Assessment is { Flags: not TreatmentDoubts.None } row)
            {
                yield return say.Say("option.doubts", ("doubts", string.Join(", ", say.Doubts(row.Flags))));
            }
        }
    }

    /// <summary>What an option costs, in a few words.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="cost">The cost.</param>
    /// <returns>For example <c>320 EUR (280 to 410)</c>.</returns>
    public static string Of(this Sentences say, OptionCost cost)
    {
        if (Guard.NotNull(cost).P50 is not { } middle)
        {
            return say.Say("hours.open");
        }

        string Money(double figure) => say.Number(figure, figure / 20);
        var price = $"{Money(middle)} {cost.Currency}";
        var priced =
            cost is { P10: { } low, P90: { } high } && Money(low) != Money(high)
                ? say.Say("cost.band", ("cost", price), ("low", Money(low)), ("high", Money(high)))
                : price;
        return cost.IsComplete ? priced : say.Say("cost.at-least", ("cost", priced));
    }

    internal static string InARow(this Sentences say, string dries, string filters) =>
        say.Say("option.in-a-row", ("first", dries), ("second", filters));

    internal static string NotConnected(this Sentences say, Machine machine) =>
        say.Say("option.not-connected", ("machine", machine.Id));

    internal static string NotEnoughPower(this Sentences say, Power needed, Power atHand) =>
        say.Say("option.power", ("needed", say.Kilowatts(needed)), ("given", say.Kilowatts(atHand)));

    internal static string OnlyCleans(this Sentences say) => say.Say("option.only-cleans");

    internal static string RenewsTooLittle(this Sentences say) => say.Say("option.renews-too-little");

    internal static string Of(this Sentences say, WhyNot reason) => say.Say("why-not." + PlainText.Kebab(reason));

    internal static string NotEnoughOil(this Sentences say, double litres, Volume stock) =>
        say.Say("option.oil", ("needed", say.With(litres, "L")), ("stock", say.With(stock.Liters, "L")));

    internal static string NotEnoughElements(this Sentences say, int elements, int stock) =>
        say.Say("option.elements", ("needed", say.Number(elements)), ("stock", say.Number(stock)));

    internal static string NoOutage(this Sentences say) => say.Say("option.no-outage");

    internal static string OutageTooShort(this Sentences say, TimeSpan needed, TimeSpan longest) =>
        say.Say(
            "option.outage-short",
            ("needed", say.Number(needed.TotalHours)),
            ("longest", say.Number(longest.TotalHours)),
            ("short", say.Number((needed - longest).TotalHours))
        );

    internal static string AsItWas(this Sentences say, string machine, DateTimeOffset at, UnitCalibration found) =>
        say.Say(
            "experience.own",
            ("machine", machine),
            ("date", say.Date(at)),
            ("removal", say.Number(found.RemovalPerPass.Percent)),
            ("lower", say.Number(found.Lower.Percent)),
            ("upper", say.Number(found.Upper.Percent)),
            ("temperature", say.With(found.Temperature.DegreesCelsius, "°C")),
            ("viscosity", say.With(found.Viscosity.Centistokes, "mm²/s"))
        );

    internal static string AnotherUnit(
        this Sentences say,
        string equipment,
        string machine,
        Ratio found,
        Ratio nameplate
    ) =>
        say.Say(
            "experience.other",
            ("equipment", equipment),
            ("machine", machine),
            ("removal", say.Number(found.Percent)),
            ("nameplate", say.Number(nameplate.Percent))
        );

    internal static string Need(this Sentences say, string need, double value, string unit) =>
        $"{say.Say("need." + need)} {say.With(value, unit)}";

    internal static string UsualUnit(this Sentences say, PurificationUnit unit) =>
        say.Say(
            "need.usual-unit",
            ("flow", say.With(unit.Pump.FullFlow.LitersPerMinute, "L/min")),
            ("temperature", say.With(unit.ProcessTemperature.DegreesCelsius, "°C")),
            ("heater", say.Kilowatts(unit.HeaterPower)),
            ("pressure", say.With(unit.Chamber.AbsolutePressure.Hectopascals, "hPa"))
        );

    internal static string Of(this Sentences say, PlanSizing.Row row)
    {
        var setting = ("setting", say.Say("size." + PlainText.Kebab(row.Setting)));
        var why = row.WhyNot is { } reason ? say.Say("size.why", ("why", say.Of(reason))) : "";
        return row.Outcome switch
        {
            PlanSizing.SizingOutcome.AnySizeDoes => say.Say("size.any", setting),
            PlanSizing.SizingOutcome.Sized => say.Say(
                "size.least",
                setting,
                ("size", Size(row.Size!.Value)),
                ("given", Size(row.AsItIs)),
                ("hours", row.Time is { } time ? say.Say("size.hours", ("hours", say.Number(time.TotalHours))) : "")
            ),
            _ => say.Say(
                "size.none",
                setting,
                ("best", row.Time is { } best ? say.Say("size.best", ("hours", say.Number(best.TotalHours))) : ""),
                ("why", why)
            ),
        };

        string Size(double size) =>
            row.Setting == PlanSizing.Setting.WholeUnit
                ? say.Say("size.times", ("times", say.Number(size)))
                : say.With(size, row.Unit);
    }

    private static string Outcome(this Sentences say, TreatmentOption option)
    {
        return string.Join(", ", Parts());

        IEnumerable<string> Parts()
        {
            var row = option.Assessment!;
            yield return say.Say("option.met", ("share", say.Percent(option.Probability)));
            if (row.WaterRemoved is { Liters: > 0 } taken)
            {
                yield return say.Say("option.takes-out", ("water", say.Litres(taken.Liters)));
            }

            yield return say.Say("option.in-hours", ("hours", say.Hours(row.Band!)));
            if (option.DoneP90 is { } done)
            {
                yield return option.Begins is { } begins
                    ? say.Say("option.begun-done", ("begun", say.Time(begins)), ("done", say.Time(done)))
                    : say.Say("option.done", ("done", say.Time(done)));
            }

            if (option.Cost is { P50: not null } cost)
            {
                yield return say.Of(cost);
            }

            if (option.Rebound is { } back)
            {
                yield return say.Back(back);
            }
        }
    }

    /// <summary>Who dries an oil that is wet again next month has only bought time.</summary>
    private static string Lasting(this Sentences say, TreatmentOption choice)
    {
        const double Soon = 90;
        return
            choice.Rebound is Arrival<DateTimeOffset>.Expected back
            && choice.DoneP50 is { } done
            && (back.Estimate - done).TotalDays < Soon
            ? say.Say("decision.does-not-last", ("days", say.Number((back.Estimate - done).TotalDays)))
            : "";
    }

    /// <summary>Millilitres where they are few: nobody sends for a unit without knowing that it is a cupful.</summary>
    private static string Litres(this Sentences say, double litres) =>
        litres < 1 ? say.With(1000 * litres, "mL", 50 * litres) : say.With(litres, "L", litres / 20);

    private static string Back(this Sentences say, Arrival<DateTimeOffset> rebound) =>
        rebound switch
        {
            Arrival<DateTimeOffset>.Expected back when say.Date(back.Earliest) == say.Date(back.Latest) => say.Say(
                "back.expected",
                ("date", say.Date(back.Estimate))
            ),
            Arrival<DateTimeOffset>.Expected back => say.Say(
                "back.between",
                ("date", say.Date(back.Estimate)),
                ("early", say.Date(back.Earliest)),
                ("late", say.Date(back.Latest))
            ),
            Arrival<DateTimeOffset>.NotBefore back => say.Say("back.not-before", ("date", say.Date(back.Earliest))),
            Arrival<DateTimeOffset>.Never => say.Say("back.never"),
            _ => say.Say("back.open"),
        };

    private static string Hired(this Sentences say, EquipmentTerms terms) =>
        say.Say(
            "terms.hired",
            (
                "lead",
                terms.LeadTime > TimeSpan.Zero
                    ? say.Say("terms.lead", ("days", say.Number(terms.LeadTime.TotalDays)))
                    : ""
            ),
            ("hours", say.Number(terms.ConnectTime.TotalHours)),
            ("stands", terms.NeedsStandstill ? say.Say("terms.stands") : ""),
            ("attended", terms.IsAttended ? say.Say("terms.attended") : "")
        );

    /// <summary>What stands in place of a cost where the plant states no prices.</summary>
    private static IEnumerable<string> Uses(this Sentences say, TreatmentAssessment row)
    {
        var energy = (row.Heat + row.Electricity).KilowattHours;
        if (energy > 0)
        {
            yield return $"{say.Number(energy)} kWh";
        }

        if (row.Elements > 0)
        {
            yield return say.Say(
                row.Elements == 1 ? "uses.element" : "uses.elements",
                ("count", say.Number(row.Elements))
            );
        }

        if (row.NewOil.Liters > 0)
        {
            yield return say.Say("uses.new-oil", ("volume", say.With(row.NewOil.Liters, "L")));
        }
    }

    private static IEnumerable<string> Doubts(this Sentences say, TreatmentDoubts flags) =>
        JsonEntry
            .Members<TreatmentDoubts>()
            .Where(one => one != TreatmentDoubts.None && (flags & one) == one)
            .Select(one => say.Say("doubt." + PlainText.Kebab(one)));

    private static string Kilowatts(this Sentences say, Power power) => $"{say.Number((double)power.Kilowatts)} kW";
}

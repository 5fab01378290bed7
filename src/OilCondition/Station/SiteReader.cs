using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads what decides over a treatment beside its physics: terms of equipment, site of a machine, prices.</summary>
internal static class SiteReader
{
    /// <summary>In the order of <see cref="DayOfWeek"/>.</summary>
    private static readonly string[] WeekDays = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];

    /// <summary>Fields that every piece of equipment may have beside those of its kind.</summary>
    public static string[] TermFields =>
        ["leadDays", "hire", "connectHours", "needsStandstill", "attended", "elementsInStock", "litresInStock"];

    public static string[] SiteFields =>
        ["place", "outages", "powerKilowatts", "reachableHoursPerDay", "emulsifiedShare"];

    public static EquipmentTerms? Terms(JsonEntry entry, TreatmentKind kind)
    {
        var hire = entry.ObjectIfAny("hire");
        hire?.Known("dayRate", "mobilisation", "note");
        var lead = entry.NumberIfAny("leadDays", 0, 3653, "days") ?? 0;
        var rate = hire?.NumberIfAny("dayRate");
        var mobilisation = hire?.NumberIfAny("mobilisation");
        var connect = entry.NumberIfAny("connectHours", 0, 720, "h");
        var stands = entry.FlagIfAny("needsStandstill");
        var attended = entry.FlagIfAny("attended") ?? false;
        var elements = entry.WholeIfAny("elementsInStock", 0, 1_000_000);
        var litres = entry.NumberIfAny("litresInStock", 0, 1e9, "L");
        return entry.Made(() =>
            new EquipmentTerms(
                hire is not null,
                Elapsed.FromDays(lead),
                rate,
                mobilisation,
                connect is { } hours ? Elapsed.FromHours(hours) : null,
                stands ?? kind is TreatmentKind.DrainAndRefill or TreatmentKind.SettlingAndDraining,
                attended,
                elements,
                litres is { } oil ? Volume.FromLiters(oil) : null
            )
        );
    }

    public static MachineSite? Site(JsonEntry entry)
    {
        var place = entry.Has("place") ? entry.Text("place") : null;
        var outages = entry.ListIfAny("outages", Outage);
        var power = entry.NumberIfAny("powerKilowatts", 0, 1e5, "kW");
        var hours = entry.NumberIfAny("reachableHoursPerDay", 0.01, 24, "h");
        var share = entry.NumberIfAny("emulsifiedShare", 0, 1, "(ratio)");
        return entry.Made(() =>
            new MachineSite(
                place,
                outages,
                power is { } kilowatts ? Power.FromKilowatts(kilowatts) : null,
                hours is { } reached ? Elapsed.FromHours(reached) : null,
                share is { } held ? Ratio.FromDecimalFractions(held) : null
            )
        );
    }

    public static StationPrices? Prices(JsonEntry root)
    {
        if (root.ObjectIfAny("prices") is not { } prices)
        {
            return null;
        }

        prices.Known(
            "currency",
            "perHour",
            "perKilowattHour",
            "perElement",
            "perLitreOfNewOil",
            "perLitreOfWaste",
            "note"
        );
        var currency = prices.Text("currency");
        var stated = prices.Made(() =>
            new TreatmentPrices(
                prices.NumberIfAny("perHour"),
                prices.NumberIfAny("perKilowattHour"),
                prices.NumberIfAny("perElement"),
                prices.NumberIfAny("perLitreOfNewOil"),
                prices.NumberIfAny("perLitreOfWaste")
            )
        );
        return currency is null || stated is null ? null : new StationPrices(currency, stated);
    }

    public static IReadOnlyList<Station.Way> Travel(JsonEntry root)
    {
        var ways = root.ListIfAny("travel", Way);
        foreach (var twice in ways.GroupBy(way => (way.From, way.To)).Where(group => group.Count() > 1))
        {
            root.Fault("travel", $"the way from '{twice.Key.From}' to '{twice.Key.To}' is there more than once.");
        }

        return ways;
    }

    public static Station.CrewHours? Crew(JsonEntry root)
    {
        if (root.ObjectIfAny("crew") is not { } crew)
        {
            return null;
        }

        crew.Known("fromHour", "toHour", "days", "note");
        var from = crew.Number("fromHour", 0, 24, "h");
        var to = crew.Number("toHour", 0, 24, "h");
        var names = crew.TextsIfAny("days");
        foreach (var name in (names ?? []).Where(name => !WeekDays.Contains(name, StringComparer.Ordinal)))
        {
            crew.Fault("days", $"'{name}'; allowed: {string.Join(", ", WeekDays)}.");
        }

        return from is null || to is null || !crew.IsFaultless
            ? null
            : crew.Made(() =>
                new Station.CrewHours(
                    Elapsed.FromHours(from.Value),
                    Elapsed.FromHours(to.Value),
                    names is null ? null : [.. names.Select(name => (DayOfWeek)Array.IndexOf(WeekDays, name))]
                )
            );
    }

    private static Station.Way? Way(JsonEntry entry)
    {
        entry.Known("from", "to", "hours", "note");
        var from = entry.Text("from");
        var to = entry.Text("to");
        var hours = entry.Number("hours", 0, 8784, "h");
        return from is null || to is null || hours is null
            ? null
            : entry.Made(() => new Station.Way(from, to, Elapsed.FromHours(hours.Value)));
    }

    private static Outage? Outage(JsonEntry entry)
    {
        entry.Known("name", "from", "to", "note");
        var name = entry.Text("name");
        var from = entry.Moment("from");
        var to = entry.Moment("to");
        return name is null || from is null || to is null
            ? null
            : entry.Made(() => new Outage(name, from.Value, to.Value));
    }
}

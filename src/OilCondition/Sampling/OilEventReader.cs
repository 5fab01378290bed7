using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads what was done to an oil: <c>oil-change</c>, <c>top-up</c>, or the kind of a treatment.</summary>
/// <param name="catalog">The measurands that may be named.</param>
/// <param name="more">Fields that an event has beside its own.</param>
internal sealed class OilEventReader(MeasurandCatalog catalog, params string[] more)
{
    public const string OilChange = "oil-change";
    public const string TopUp = "top-up";

    private static readonly IReadOnlyList<TreatmentKind> Treatments = JsonEntry.Members<TreatmentKind>();

    public OilEvent? Read(JsonEntry entry)
    {
        var kind = entry.Text("kind");
        var at = entry.Moment("at");
        return kind is null || at is null ? null
            : kind == OilChange ? Change(entry, at.Value)
            : kind == TopUp ? Added(entry, at.Value)
            : Treatment(entry, at.Value, kind);
    }

    private void Known(JsonEntry entry, params string[] names) => entry.Known([.. more, "kind", "at", .. names]);

    private OilChange? Change(JsonEntry entry, DateTimeOffset at)
    {
        Known(entry);
        return entry.Made(() => new OilChange(at));
    }

    private TopUp? Added(JsonEntry entry, DateTimeOffset at)
    {
        Known(entry, "litres");
        return entry.Number("litres") is { } litres ? entry.Made(() => new TopUp(at, Volume.FromLiters(litres))) : null;
    }

    private TreatmentRun? Treatment(JsonEntry entry, DateTimeOffset at, string word)
    {
        Known(entry, "endedAt", "measurand", "target", "unit", "equipment", "planned");
        var known = Treatments.Where(kind => PlainText.Kebab(kind) == word).ToList();
        if (known.Count == 0)
        {
            var words = new[] { OilChange, TopUp }.Concat(Treatments.Select(kind => PlainText.Kebab(kind)));
            entry.Fault("kind", $"'{word}'; allowed: {string.Join(", ", words)}.");
        }

        var endedAt = entry.MomentIfAny("endedAt");
        var target = entry.Number("target");
        if (
            entry.Text("measurand") is not { } id
            || target is null
            || known.Count == 0
            || entry.Has("endedAt") != endedAt.HasValue
        )
        {
            return null;
        }

        if (!catalog.TryFind(id, out var measurand))
        {
            entry.Fault("measurand", catalog.Unknown(id));
            return null;
        }

        var equipment = entry.Has("equipment") ? entry.Text("equipment") : null;
        var unit = entry.TextOrEmpty("unit");
        if (!measurand!.TryConvert(target.Value, unit, out var converted))
        {
            entry.Fault("unit", $"'{unit}' cannot be converted to {measurand!.Unit} ({measurand.Id}).");
            return null;
        }

        var planned = Planned(entry);
        return entry.Has("planned") && planned is null
            ? null
            : entry.Made(() => new TreatmentRun(at, endedAt, known[0], measurand!, converted, equipment, planned));
    }

    private static TreatmentRun.PlannedUnit? Planned(JsonEntry entry)
    {
        if (entry.ObjectIfAny("planned") is not { } planned)
        {
            return null;
        }

        planned.Known("flowLitresPerMinute", "removalPerPass", "floorMgPerKg", "waterIngressGramsPerHour");
        var flow = planned.Number("flowLitresPerMinute");
        var removal = planned.Number("removalPerPass");
        var floor = planned.Number("floorMgPerKg");
        var ingress = planned.Has("waterIngressGramsPerHour") ? planned.Number("waterIngressGramsPerHour") : 0;
        return flow is null || removal is null || floor is null || ingress is null
            ? null
            : planned.Made(() =>
                new TreatmentRun.PlannedUnit(
                    VolumeFlow.FromLitersPerMinute(flow.Value),
                    Ratio.FromDecimalFractions(removal.Value),
                    MassFraction.FromPartsPerMillion(floor.Value),
                    MassFlow.FromGramsPerHour(ingress.Value)
                )
            );
    }
}

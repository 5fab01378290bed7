using OilCondition.Limits;

namespace OilCondition.Tests.Limits;

/// <summary>Limits of every kind, on both sides, with all that a limit can have.</summary>
internal static class AnyLimits
{
    private static readonly Source Where = new(SourceKind.Handbook, "invented", "table 2");

    public static LimitSet Set { get; } =
        new(
            "any",
            [
                Of(Measurands.WaterContent, LimitKind.Absolute, new LimitBand(200, 500), null, deadBand: 20.5),
                Of(Measurands.WaterContent, LimitKind.Fleet, new LimitBand(90, 98), null),
                Of(Measurands.RelativeSaturation, LimitKind.Absolute, new LimitBand(50, 80), null),
                Of(Measurands.OilTemperature, LimitKind.Absolute, new LimitBand(70, 80), new LimitBand(10, null)),
                Of(
                    Measurands.Viscosity40,
                    LimitKind.PercentChangeFromNew,
                    new LimitBand(5, 10),
                    new LimitBand(-5, -10)
                ),
                Of(Measurands.Viscosity40, LimitKind.Absolute, null, new LimitBand(null, 41.4)),
                Of(Measurands.AcidNumber, LimitKind.ChangeFromNew, new LimitBand(0.2, 0.3), null),
                Of(Measurands.BaseNumber, LimitKind.ChangeFromNew, null, new LimitBand(-1, -2)),
                Of(
                    Measurands.Iron,
                    LimitKind.Absolute,
                    new LimitBand(20, 40),
                    null,
                    confirmations: 2,
                    note: "as agreed"
                ),
                Of(Measurands.Iron, LimitKind.OwnHistory, new LimitBand(95, 99), null),
                Of(Measurands.Iron, LimitKind.RateOfChange, new LimitBand(10, null), null, per: TimeSpan.FromDays(30)),
                Of(
                    Measurands.Copper,
                    LimitKind.RateOfChange,
                    new LimitBand(1, null),
                    null,
                    per: TimeSpan.FromHours(500),
                    overOilHours: true
                ),
                Of(Measurands.Particles4, LimitKind.Absolute, new LimitBand(2500, 10_000), null),
                Of(Measurands.Particles6, LimitKind.Absolute, new LimitBand(640, 2500), null),
            ],
            "for tests"
        );

    private static Limit Of(
        Measurand measurand,
        LimitKind kind,
        LimitBand? upper,
        LimitBand? lower,
        double deadBand = 0,
        int? confirmations = null,
        TimeSpan? per = null,
        bool overOilHours = false,
        string note = ""
    ) => new(measurand, kind, upper, lower, Where, deadBand, confirmations, per, overOilHours, note);
}

using System.Text.Json;

namespace HarrowPoint.Generator;

/// <summary>What the invented machines really do: the numbers that the generator used, against which the library is held.</summary>
public sealed record Truth(
    double ReturnMgPerKgPerDay,
    double ReturnAtEndOfCleanupMgPerKg,
    DateTimeOffset WaterAlarmAt,
    CleanupTruth GuideBearingCleanup,
    CleanupTruth GateUnitCleanup,
    double GovernorGrowthPerDay,
    DateTimeOffset GovernorAlarmAt,
    double GearboxWaterMgPerKg,
    DateTimeOffset PumpAcidAlarmAt,
    DateTimeOffset PumpRpvotAlarmAt,
    IReadOnlyList<string> SwappedSamples,
    int BadCells
)
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, NewLine = "\n" };

    public static Truth Read(string path) =>
        JsonSerializer.Deserialize<Truth>(File.ReadAllText(path), Options)
        ?? throw new FormatException($"{path} holds no truth.");

    public string ToJson() => JsonSerializer.Serialize(this, Options) + "\n";
}

/// <summary>A cleanup run: free water leaves evenly, then the rest falls exponentially.</summary>
public sealed record CleanupTruth(
    DateTimeOffset StartedAt,
    double StartMgPerKg,
    double FreeStageHours,
    double AtSaturationMgPerKg,
    double FloorMgPerKg,
    double RatePerHour,
    double TargetMgPerKg
)
{
    public DateTimeOffset TargetAt =>
        StartedAt.AddHours(
            FreeStageHours
                + Math.Log((AtSaturationMgPerKg - FloorMgPerKg) / (TargetMgPerKg - FloorMgPerKg)) / RatePerHour
        );

    public double WaterAt(double hours) =>
        hours < FreeStageHours
            ? StartMgPerKg + (AtSaturationMgPerKg - StartMgPerKg) * hours / FreeStageHours
            : FloorMgPerKg + (AtSaturationMgPerKg - FloorMgPerKg) * Math.Exp(-RatePerHour * (hours - FreeStageHours));
}

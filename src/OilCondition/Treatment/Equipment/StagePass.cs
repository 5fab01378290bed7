namespace OilCondition.Treatment;

/// <summary>Oil that has passed a real vacuum stage once; SI units.</summary>
internal readonly record struct StagePass(
    double EvaporatedKilogramPerSecond,
    double VapourKilogramPerSecond,
    double LatentWatts,
    double ReturnCelsius,
    double Pascal,
    RemovalLimit Limit
);

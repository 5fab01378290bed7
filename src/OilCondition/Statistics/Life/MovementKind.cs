namespace OilCondition.Statistics;

/// <summary>The kinds of <see cref="Movement"/>.</summary>
internal enum MovementKind
{
    /// <summary>The mean stands.</summary>
    Still,

    /// <summary>The mean moves along its course.</summary>
    Moving,

    /// <summary>The drift itself is a random walk.</summary>
    DriftWalks,
}

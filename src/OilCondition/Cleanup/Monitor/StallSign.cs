namespace OilCondition.Cleanup;

/// <summary>How the readings of a run show that it stalls.</summary>
internal enum StallSign
{
    /// <summary>They do not show it.</summary>
    None,

    /// <summary>They exclude a level at the target or below, and nine tenths of the fall are over.</summary>
    LevelsOff,

    /// <summary>
    /// For <see cref="CleanupMonitorOptions.StallAfter"/> or longer, and over at least six readings, they show no fall: they exclude that half of what is
    /// missing to the target is gone, and do not show that a tenth is. Titrations above saturation need a quarter of that time where they exclude the part of the half that falls to it.
    /// </summary>
    ShowsNoFall,

    /// <summary>
    /// Titrations of warm oil, after one planned turnover, show no fall, and exclude a quarter of the planned one and the target within three planned time constants;
    /// or in three planned time constants the curve has not fallen by one. Only a run that is followed with its plan shows this.
    /// </summary>
    BehindThePlan,

    /// <summary>They rise, above the target, when the oil has long been warm and mixed: more comes in than leaves.</summary>
    Rises,

    /// <summary>
    /// A sensor has stood at saturation for <see cref="CleanupMonitorOptions.StallAfter"/> or longer, and no titration tells of a fall. With a plan: for so long that the water
    /// which was there would have left.
    /// </summary>
    AtSaturation,
}

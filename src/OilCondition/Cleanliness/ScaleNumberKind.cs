namespace OilCondition.Cleanliness;

/// <summary>How a scale number of ISO 4406 is to be read.</summary>
internal enum ScaleNumberKind
{
    /// <summary>No count at this size was asked for; written <c>-</c>.</summary>
    NotCounted,

    /// <summary>A number from the table, resting on 20 particles or more, or on a count whose particles were not stated.</summary>
    Counted,

    /// <summary>Fewer than 20 particles were counted; written <c>≥7</c>.</summary>
    FewCounted,

    /// <summary>Too numerous to count; written <c>*</c>.</summary>
    TooNumerous,
}

namespace OilCondition.Prognosis;

/// <summary>On which side a limit lies.</summary>
public enum LimitSide
{
    /// <summary>Not to be exceeded.</summary>
    Upper,

    /// <summary>Not to be undercut.</summary>
    Lower,
}

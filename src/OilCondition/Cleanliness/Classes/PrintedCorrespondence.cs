namespace OilCondition.Cleanliness;

/// <summary>A code after ISO 4406 that a document prints beside a class.</summary>
public sealed record PrintedCorrespondence
{
    internal PrintedCorrespondence(CleanlinessCode code, Source source)
    {
        Code = code;
        Source = source;
    }

    /// <summary>The code.</summary>
    public CleanlinessCode Code { get; }

    /// <summary>Who prints it.</summary>
    public Source Source { get; }
}

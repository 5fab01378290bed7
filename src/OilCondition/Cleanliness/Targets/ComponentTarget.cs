using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>The span of target codes after ISO 4406 that is usual for a component.</summary>
public sealed record ComponentTarget
{
    /// <summary>A span of target codes.</summary>
    /// <param name="component">What the target is for; not blank.</param>
    /// <param name="strictest">The cleanest code of the span: high pressure, severe duty, long life or safety.</param>
    /// <param name="loosest">The dirtiest code of the span, at no size below the strictest; <c>-</c> at the same sizes.</param>
    /// <param name="source">Where the span comes from.</param>
    /// <exception cref="ArgumentNullException">A code or the source is missing.</exception>
    /// <exception cref="ArgumentException">
    /// The component is blank; a number has a mark, is <c>*</c> or above the table; or the loosest code lies below the strictest.
    /// </exception>
    public ComponentTarget(string component, CleanlinessCode strictest, CleanlinessCode loosest, Source source)
    {
        Component = Guard.NotBlank(component);
        Strictest = Plain(Guard.NotNull(strictest), nameof(strictest));
        Loosest = Plain(Guard.NotNull(loosest), nameof(loosest));
        Source = Guard.NotNull(source);
        foreach (var size in new[] { CodeSize.At4, CodeSize.At6, CodeSize.At14 })
        {
            var (low, high) = (strictest.At(size), loosest.At(size));
            if (low.HasNumber != high.HasNumber || (low.HasNumber && low.Number > high.Number))
            {
                throw new ArgumentException(
                    $"strictest is {strictest}, loosest is {loosest}; allowed: the same sizes, no number of the loosest below that of the strictest.",
                    nameof(loosest)
                );
            }
        }
    }

    /// <summary>What the target is for.</summary>
    public string Component { get; }

    /// <summary>The cleanest code of the span.</summary>
    public CleanlinessCode Strictest { get; }

    /// <summary>The dirtiest code of the span.</summary>
    public CleanlinessCode Loosest { get; }

    /// <summary>Where the span comes from.</summary>
    public Source Source { get; }

    /// <summary>The span.</summary>
    /// <returns>For example <c>servo valve: 14/12/9 to 16/14/11</c>.</returns>
    public override string ToString() => $"{Component}: {Strictest} to {Loosest}";

    private static CleanlinessCode Plain(CleanlinessCode code, string name)
    {
        ScaleNumber[] numbers = [code.At4, code.At6, code.At14];
        return numbers.All(number =>
            number.Kind == ScaleNumberKind.NotCounted
            || (number.Kind == ScaleNumberKind.Counted && number.Number <= Iso4406.HighestScaleNumber)
        )
            ? code
            : throw new ArgumentException($"{name} is {code}; allowed: numbers 0 to 28 without a mark, or '-'.", name);
    }
}

using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>How long the unit takes from place to place. Within one place it takes no time.</summary>
public sealed class TravelTimes
{
    private const double MostHours = 8784;

    private readonly Dictionary<(string From, string To), TimeSpan> times = [];

    /// <summary>States travel times.</summary>
    /// <param name="legs">From, to and time of each way, 0 to 8784 h; a way is stated once.</param>
    /// <param name="isSymmetric">Whether a way that is not stated takes as long as the way back.</param>
    /// <exception cref="ArgumentException">A place is blank, or a way is stated twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is out of range.</exception>
    public TravelTimes(IReadOnlyList<(string From, string To, TimeSpan Time)> legs, bool isSymmetric = true)
    {
        Guard.NotNull(legs);
        IsSymmetric = isSymmetric;
        foreach (var (from, to, time) in legs)
        {
            Guard.NotBlank(from, nameof(legs));
            Guard.NotBlank(to, nameof(legs));
            Guard.InRange(time.TotalHours, 0, MostHours, "h", $"legs, {from} to {to}");
            if (from == to && time != TimeSpan.Zero)
            {
                throw new ArgumentException(
                    $"legs has {from} to {to} with {PlainText.Number(time.TotalHours)} h; allowed: 0 h within one place.",
                    nameof(legs)
                );
            }

            if (!times.TryAdd((from, to), time))
            {
                throw new ArgumentException($"legs has {from} to {to} twice; state each way once.", nameof(legs));
            }
        }
    }

    /// <summary>All machines stand at one place.</summary>
    public static TravelTimes None { get; } = new([]);

    /// <summary>Whether a way that is not stated takes as long as the way back.</summary>
    public bool IsSymmetric { get; }

    /// <summary>Time from one place to another.</summary>
    /// <param name="from">Where the unit leaves.</param>
    /// <param name="to">Where it arrives.</param>
    /// <returns>The time; zero within one place.</returns>
    /// <exception cref="ArgumentException">The way is not stated; the message names both places.</exception>
    public TimeSpan Between(string from, string to)
    {
        Guard.NotBlank(from);
        Guard.NotBlank(to);
        if (from == to)
        {
            return TimeSpan.Zero;
        }

        return times.TryGetValue((from, to), out var time) ? time
            : IsSymmetric && times.TryGetValue((to, from), out var back) ? back
            : throw new ArgumentException($"No travel time from {from} to {to} is stated.", nameof(to));
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{times.Count} travel times{(IsSymmetric ? ", the way back takes as long unless stated" : "")}";
}

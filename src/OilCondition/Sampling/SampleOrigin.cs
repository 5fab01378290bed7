using OilCondition.Text;

namespace OilCondition;

/// <summary>Where a suspect sample seems to come from.</summary>
/// <remarks>
/// Common practice, no source: two bottles of one sampling round change places, or one machine is sampled twice. The identity measurands
/// (viscosity, additive elements) of the suspect sample are compared with every other machine's samples; where all that both have, and two
/// at least, lie in the range of those samples or within a tenth of it, the machine is named, the one with the nearest medians first.
/// A suspect sample there of the same fortnight that in turn fits here is its counterpart.
/// </remarks>
public sealed class SampleOrigin
{
    private const double Margin = 0.1;
    private const int FewestShared = 2;

    private static readonly TimeSpan OneRound = TimeSpan.FromDays(14);

    private SampleOrigin(Machine recordedFor, OilSample sample, Machine resembles, OilSample? counterpart)
    {
        RecordedFor = recordedFor;
        Sample = sample;
        Resembles = resembles;
        Counterpart = counterpart;
    }

    /// <summary>The machine it is recorded for.</summary>
    public Machine RecordedFor { get; }

    /// <summary>The suspect sample.</summary>
    public OilSample Sample { get; }

    /// <summary>The machine whose oil it resembles most.</summary>
    public Machine Resembles { get; }

    /// <summary>The sample that seems to have changed places with it; null when there is none.</summary>
    public OilSample? Counterpart { get; }

    /// <summary>Looks for the origin of every suspect sample of a fleet.</summary>
    /// <param name="fleet">The histories.</param>
    /// <returns>The suspect samples that resemble another machine's oil, in the order of the fleet and of time.</returns>
    public static IReadOnlyList<SampleOrigin> Find(IReadOnlyList<OilHistory> fleet)
    {
        Guard.NotNull(fleet);
        return
        [
            .. fleet.SelectMany(history =>
                history
                    .Samples.Where(history.IsSuspect)
                    .Select(sample => Of(fleet, history, sample))
                    .OfType<SampleOrigin>()
            ),
        ];
    }

    private static SampleOrigin? Of(IReadOnlyList<OilHistory> fleet, OilHistory history, OilSample sample)
    {
        var nearest = fleet
            .Where(other => !ReferenceEquals(other, history))
            .Select(other => (History: other, Difference: Difference(sample, other)))
            .Where(pair => pair.Difference is not null)
            .OrderBy(pair => pair.Difference)
            .Select(pair => pair.History)
            .FirstOrDefault();
        if (nearest is null)
        {
            return null;
        }

        var counterpart = nearest.Samples.FirstOrDefault(other =>
            nearest.IsSuspect(other)
            && (other.TakenAt - sample.TakenAt).Duration() <= OneRound
            && Difference(other, history) is not null
        );
        return new SampleOrigin(history.Machine, sample, nearest.Machine, counterpart);
    }

    /// <summary>The largest relative difference from the machine's medians; null when the sample does not fit there.</summary>
    private static double? Difference(OilSample sample, OilHistory history)
    {
        var shared = 0;
        var largest = 0.0;
        foreach (var pair in sample.Readings.Where(one => one.Key.TellsOilIdentity && !one.Value.IsCensored))
        {
            var usual = history
                .Samples.Where(other => !history.IsSuspect(other) && other.Readings.ContainsKey(pair.Key))
                .Select(other => other.Readings[pair.Key].Value)
                .OrderBy(value => value)
                .ToList();
            if (usual.Count == 0)
            {
                continue;
            }

            var value = pair.Value.Value;
            var (lowest, highest) = (usual[0], usual[usual.Count - 1]);
            if (value < lowest - Margin * Math.Abs(lowest) || value > highest + Margin * Math.Abs(highest))
            {
                return null;
            }

            var median = (usual[(usual.Count - 1) / 2] + usual[usual.Count / 2]) / 2;
            largest = Math.Max(largest, Math.Abs(value - median) / Math.Max(Math.Abs(median), 1e-9));
            shared++;
        }

        return shared >= FewestShared ? largest : null;
    }

    /// <summary>Which sample, and whose oil it resembles.</summary>
    /// <returns>For example <c>S9 of 2025-10-03 of M1 resembles the oil of M2; changed places with S21</c>.</returns>
    public override string ToString() =>
        $"{Sample} of {RecordedFor.Id} resembles the oil of {Resembles.Id}"
        + (Counterpart is { } other ? $"; changed places with {other.SampleNumber}" : "");
}

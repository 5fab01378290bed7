using OilCondition.Prognosis;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>What happens if nothing is done: the chance of passing alert and alarm before each outage, and hours in free water so far and to come.</summary>
/// <remarks>
/// Of several measurands the one most likely to pass counts: their chances are not independent, and none is invented for one without a forecast. Hours so far
/// are read from the titrations of this oil fill, straight lines between them. Hours to come are the integral of the chance that saturation is passed.
/// </remarks>
public sealed class WaitingOutlook
{
    private static readonly int[] DaysAhead = [30, 90, 180];

    private const int Parts = 24;
    private const int MostSteps = 4;

    private WaitingOutlook(IReadOnlyList<Step> steps, bool hasOutages, TimeSpan? running, TimeSpan? standstill)
    {
        Steps = steps;
        HasOutages = hasOutages;
        FreeWaterSoFar = running;
        FreeIfStoppedSoFar = standstill;
    }

    /// <summary>Until each outage that is planned, at most four; where none is, until 30, 90 and 180 days from now.</summary>
    public IReadOnlyList<Step> Steps { get; }

    /// <summary>Whether the steps are outages of the station file.</summary>
    public bool HasOutages { get; }

    /// <summary>How long this oil fill has held free water at running temperature; null where saturation or readings are not known.</summary>
    public TimeSpan? FreeWaterSoFar { get; }

    /// <summary>How long a standstill would have freed water, the hours above included; null where saturation or readings are not known.</summary>
    public TimeSpan? FreeIfStoppedSoFar { get; }

    internal static WaitingOutlook Of(
        ConditionAssessment assessment,
        IReadOnlyCollection<ProblemTopic> topics,
        MachineSite site
    )
    {
        var asOf = assessment.Options.AsOf;
        var outages = site.Outages.Where(one => one.From > asOf).Take(MostSteps).ToList();
        (string Name, int? DaysAhead, DateTimeOffset At)[] ends =
            outages.Count > 0
                ? [.. outages.Select(one => (one.Name, (int?)null, one.From))]
                : [.. DaysAhead.Select(days => ($"{days} days from now", (int?)days, asOf.AddDays(days)))];
        var states = assessment.States.Where(state => state.Latest is not null).ToList();
        var oil = assessment.History.Machine.Oil;
        var lives = states.SelectMany(state => Figures(oil, state, assessment, topics)).ToList();
        var water = topics.Contains(ProblemTopic.Water) ? WaterCourse.Of(assessment) : null;
        return new WaitingOutlook(
            [
                .. ends.Select(end => new Step(
                    end.Name,
                    end.DaysAhead,
                    end.At,
                    Chance(lives, isAlarm: false, end.At),
                    Chance(lives, isAlarm: true, end.At),
                    water?.ToCome(water.Running, end.At),
                    water?.ToCome(water.Standstill, end.At)
                )),
            ],
            outages.Count > 0,
            water?.SoFar(water.Running),
            water?.SoFar(water.Standstill)
        );
    }

    private static IEnumerable<(bool IsAlarm, RemainingLife Life)> Figures(
        Oil oil,
        MeasurandState state,
        ConditionAssessment assessment,
        IReadOnlyCollection<ProblemTopic> topics
    )
    {
        var fleet = assessment.Options.Fleet.FirstOrDefault(one => one.Measurand.Equals(state.Measurand));
        foreach (var side in FixedFigures.Sides)
        {
            if (!topics.Contains(ProblemIdentity.Of(state.Measurand, side).Topic))
            {
                continue;
            }

            var figures = new FixedFigures(oil, state.Measurand, assessment.Limits.Limits);
            foreach (var (isAlarm, figure) in new[] { (false, figures.First(side)), (true, figures.Last(side)) })
            {
                if (figure is { } limit)
                {
                    yield return (
                        isAlarm,
                        LifeForecast.Of(
                            state.Trend,
                            limit,
                            side,
                            assessment.Options.AsOf,
                            new LifeOptions(fleet: fleet)
                        )
                    );
                }
            }
        }
    }

    private static Ratio? Chance(List<(bool IsAlarm, RemainingLife Life)> lives, bool isAlarm, DateTimeOffset at)
    {
        var known = lives
            .Where(one => one.IsAlarm == isAlarm)
            .Select(one =>
                one.Life switch
                {
                    RemainingLife.AlreadyCrossed => 1.0,
                    RemainingLife.Forecast forecast => forecast.Crossing.ChanceBefore(at),
                    _ => (double?)null,
                }
            )
            .Where(chance => chance is not null)
            .ToList();
        return known.Count == 0 ? null : Ratio.FromDecimalFractions(known.Max()!.Value);
    }

    /// <summary>The outlook in one line for each step.</summary>
    /// <returns>Lines such as <c>until annual outage, 2026-09-07: alarm 12 %, alert 61 %</c>.</returns>
    public override string ToString() => string.Join("\n", Sentences.English.Lines(this));

    /// <summary>Waiting until a moment.</summary>
    public sealed class Step
    {
        internal Step(
            string name,
            int? daysAhead,
            DateTimeOffset at,
            Ratio? alert,
            Ratio? alarm,
            TimeSpan? freeWater,
            TimeSpan? freeIfStopped
        )
        {
            Name = name;
            DaysAhead = daysAhead;
            At = at;
            ChanceOfAlert = alert;
            ChanceOfAlarm = alarm;
            FreeWaterToCome = freeWater;
            FreeIfStoppedToCome = freeIfStopped;
        }

        /// <summary>The outage, or how far it is looked ahead.</summary>
        public string Name { get; }

        /// <summary>How far it is looked ahead; null for an outage.</summary>
        internal int? DaysAhead { get; }

        /// <summary>Until when.</summary>
        public DateTimeOffset At { get; }

        /// <summary>Chance that an alert figure is passed by then, 1 where it is passed now; null without a forecast.</summary>
        public Ratio? ChanceOfAlert { get; }

        /// <summary>Chance that an alarm figure is passed by then, 1 where it is passed now; null without a forecast.</summary>
        public Ratio? ChanceOfAlarm { get; }

        /// <summary>Expected time with free water at running temperature until then; null where it cannot be told.</summary>
        public TimeSpan? FreeWaterToCome { get; }

        /// <summary>Expected time until then in which a standstill would free water; null where it cannot be told.</summary>
        public TimeSpan? FreeIfStoppedToCome { get; }

        /// <summary>The step in one line.</summary>
        /// <returns>For example <c>until annual outage, 2026-09-07: alarm 12 %, alert 61 %</c>.</returns>
        public override string ToString() => Sentences.English.Of(this);
    }

    /// <summary>The water of an oil fill against its saturation, so far and to come.</summary>
    private sealed class WaterCourse
    {
        private readonly ConditionAssessment assessment;
        private readonly IReadOnlyList<SeriesPoint> points;
        private readonly MeasurandState? state;

        private WaterCourse(ConditionAssessment assessment, WaterInOil.Split split)
        {
            this.assessment = assessment;
            Running = split.Running.Saturation.Content.PartsPerMillion;
            Standstill = split.Standstill.Saturation.Content.PartsPerMillion;
            points = assessment
                .History.SampleSeries(Measurands.WaterContent, assessment.Charge.Since, assessment.Options.AsOf)
                .Points;
            state = assessment.States.FirstOrDefault(one => one.Measurand.Equals(Measurands.WaterContent));
        }

        public double Running { get; }

        public double Standstill { get; }

        public static WaterCourse? Of(ConditionAssessment assessment) =>
            assessment.Water is WaterInOil.Split split ? new WaterCourse(assessment, split) : null;

        /// <summary>Straight lines between readings, the last held until now; over a treatment the level before it is held until it begins.</summary>
        public TimeSpan? SoFar(double saturation)
        {
            if (points.Count == 0)
            {
                return null;
            }

            var hours = 0.0;
            for (var i = 0; i < points.Count; i++)
            {
                var (from, to) = (points[i].At, i + 1 < points.Count ? points[i + 1].At : assessment.Options.AsOf);
                var (first, last) = (points[i].Reading.Value, points[Math.Min(i + 1, points.Count - 1)].Reading.Value);
                var run = assessment
                    .History.Events.OfType<TreatmentRun>()
                    .FirstOrDefault(one =>
                        one.At >= from && one.At < to && ChargeRecords.AffectedBy(one, Measurands.WaterContent)
                    );
                hours += run is null
                    ? Above(first, last, saturation, (to - from).TotalHours)
                    : Above(first, first, saturation, (run.At - from).TotalHours)
                        + Above(last, last, saturation, Math.Max(0, (to - (run.EndedAt ?? to)).TotalHours));
            }

            return Elapsed.FromHours(hours);
        }

        public TimeSpan? ToCome(double saturation, DateTimeOffset until)
        {
            var asOf = assessment.Options.AsOf;
            if (state is null)
            {
                return null;
            }

            return LifeForecast.Of(state.Trend, saturation, LimitSide.Upper, asOf, new LifeOptions()) switch
            {
                RemainingLife.AlreadyCrossed => until - asOf,
                RemainingLife.Forecast forecast => Elapsed.FromHours(
                    (until - asOf).TotalHours
                        / Parts
                        * Enumerable
                            .Range(0, Parts)
                            .Sum(i =>
                                forecast.Crossing.ChanceBefore(
                                    asOf + TimeSpan.FromTicks((until - asOf).Ticks / (2 * Parts) * (2 * i + 1))
                                )
                            )
                ),
                _ => null,
            };
        }

        private static double Above(double first, double last, double saturation, double hours)
        {
            var (low, high) = (Math.Min(first, last), Math.Max(first, last));
            return low >= saturation ? hours
                : high <= saturation ? 0
                : hours * (high - saturation) / (high - low);
        }
    }
}

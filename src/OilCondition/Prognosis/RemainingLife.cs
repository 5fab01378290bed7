using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>How long until a measurand crosses a limit: exactly one of the nested cases.</summary>
/// <remarks>
/// Every chance is given that the limit is not crossed now. What crosses depends on the model: the state itself, with
/// <see cref="LifeModel.LineNewReading"/> a new reading. See docs/prognosis.md for formulas and for how often the intervals hold the truth.
/// </remarks>
public abstract class RemainingLife
{
    private RemainingLife(LifeQuestion question)
    {
        Question = question;
    }

    /// <summary>The readings that were given.</summary>
    public MeasurandSeries Series => Question.Series;

    /// <summary>The limit, in the measurand's unit.</summary>
    public double Limit => Question.Limit;

    /// <summary>On which side the limit lies.</summary>
    public LimitSide Side => Question.Side;

    /// <summary>The model that was asked.</summary>
    public LifeModel Model => Question.Model;

    private LifeQuestion Question { get; }

    /// <summary>Measurand, limit, and when it is passed.</summary>
    /// <returns>For example <c>acid number to 0.4 mgKOH/g: 10 % by 2026-08-01, 50 % by 2026-10-12, 90 % by 2027-03-01</c>.</returns>
    public override string ToString() =>
        $"{Series.Measurand.Name} to {PlainText.Reported(Limit)} {Series.Measurand.Unit}".TrimEnd() + $": {When}";

    private protected abstract string When { get; }

    /// <summary>A case with a trend and with chances for any date.</summary>
    public abstract class Forecast : RemainingLife
    {
        private protected Forecast(LifeQuestion question, StraightLine trend, CrossingForecast crossing)
            : base(question)
        {
            Trend = trend;
            Crossing = crossing;
        }

        /// <summary>
        /// The straight line through the readings, in days from the series' origin, on the scale of the model (logarithms for a logarithmic
        /// measurand and for exponential growth): what moves, and how surely.
        /// </summary>
        public StraightLine Trend { get; }

        /// <summary>When the limit is crossed.</summary>
        public CrossingForecast Crossing { get; }

        private protected override string When => Crossing.ToString();
    }

    /// <summary>The limit will be crossed, and both ends of the interval are known.</summary>
    public sealed class Crosses : Forecast
    {
        internal Crosses(
            LifeQuestion question,
            StraightLine trend,
            CrossingForecast crossing,
            DateTimeOffset p10,
            DateTimeOffset p50,
            DateTimeOffset p90
        )
            : base(question, trend, crossing)
        {
            P10 = p10;
            P50 = p50;
            P90 = p90;
        }

        /// <summary>Crossed by then in one case of ten: the date to plan with.</summary>
        public DateTimeOffset P10 { get; }

        /// <summary>Crossed by then in half of the cases.</summary>
        public DateTimeOffset P50 { get; }

        /// <summary>Crossed by then in nine cases of ten.</summary>
        public DateTimeOffset P90 { get; }
    }

    /// <summary>
    /// The limit may be crossed from some date on, but no latest date can be given: with a straight line Fieller's unbounded case.
    /// </summary>
    public sealed class NoLatestDate : Forecast
    {
        internal NoLatestDate(LifeQuestion question, StraightLine trend, CrossingForecast crossing, DateTimeOffset p10)
            : base(question, trend, crossing)
        {
            P10 = p10;
        }

        /// <summary>Crossed by then in one case of ten.</summary>
        public DateTimeOffset P10 { get; }
    }

    /// <summary>The chance of crossing within <see cref="LifeForecast.HorizonYears"/> years is below one in ten.</summary>
    public sealed class NotApproaching : Forecast
    {
        internal NotApproaching(LifeQuestion question, StraightLine trend, CrossingForecast crossing)
            : base(question, trend, crossing) { }
    }

    /// <summary>Make-up holds the measurand: the chance that the limit is ever crossed is below one in ten, as long as make-up goes on as it does.</summary>
    public sealed class HeldByMakeUp : Forecast
    {
        internal HeldByMakeUp(
            LifeQuestion question,
            StraightLine trend,
            CrossingForecast crossing,
            double longRunLevel,
            double chanceEver
        )
            : base(question, trend, crossing)
        {
            LongRunLevel = longRunLevel;
            ChanceEver = chanceEver;
        }

        /// <summary>Level that the measurand approaches, in its unit.</summary>
        public double LongRunLevel { get; }

        /// <summary>Chance that the limit is crossed all the same.</summary>
        public double ChanceEver { get; }

        private protected override string When =>
            $"held by make-up at {PlainText.Number(LongRunLevel)} {Series.Measurand.Unit}".TrimEnd();
    }

    /// <summary>The last reading is beyond the limit.</summary>
    public sealed class AlreadyCrossed : RemainingLife
    {
        internal AlreadyCrossed(LifeQuestion question)
            : base(question) { }

        private protected override string When => "passed already";
    }

    /// <summary>There are too few readings for a trend, or all were taken at one moment.</summary>
    public sealed class TooFewReadings : RemainingLife
    {
        internal TooFewReadings(LifeQuestion question, int count, int needed)
            : base(question)
        {
            Count = count;
            Needed = needed;
        }

        /// <summary>Readings there are.</summary>
        public int Count { get; }

        /// <summary>Readings needed.</summary>
        public int Needed { get; }

        private protected override string When => $"{Count} of {Needed} readings needed";
    }
}

using MathNet.Numerics.RootFinding;

namespace OilCondition.Treatment;

/// <summary>Integrates y′ = f(y) with the embedded pair of orders 5 and 4 and a step that keeps to a tolerance.</summary>
/// <remarks>
/// Coefficients: Dormand and Prince, J. Comput. Appl. Math. 6 (1980) 19, as in Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I,
/// table 5.2 (from memory; the closed forms in the tests fail with a wrong coefficient). The numerics library at hand has fixed steps only, and a plan runs from minutes of flashing to days of
/// levelling off. Sums that f conserves are conserved to rounding, whatever the step: balances close.
/// </remarks>
internal sealed class DormandPrince
{
    private const double Shortest = 1e-6;

    private static readonly double[][] A =
    [
        [1.0 / 5],
        [3.0 / 40, 9.0 / 40],
        [44.0 / 45, -56.0 / 15, 32.0 / 9],
        [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729],
        [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656],
        [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84],
    ];

    private static readonly double[] Error =
    [
        71.0 / 57600,
        0,
        -71.0 / 16695,
        71.0 / 1920,
        -17253.0 / 339200,
        22.0 / 525,
        -1.0 / 40,
    ];

    private readonly Func<double[], double[]> rates;
    private readonly double[] absolute;
    private readonly double relative;
    private double step;

    public DormandPrince(
        Func<double[], double[]> rates,
        double[] start,
        double[] absolute,
        double relative,
        double step
    )
    {
        this.rates = rates;
        this.absolute = absolute;
        this.relative = relative;
        this.step = step;
        State = start;
        Previous = start;
        Rates = rates(start);
        PreviousRates = Rates;
    }

    public double Time { get; private set; }

    public double[] State { get; private set; }

    public double PreviousTime { get; private set; }

    private double[] Rates { get; set; }

    private double[] Previous { get; set; }

    private double[] PreviousRates { get; set; }

    /// <summary>One accepted step, no further than a time.</summary>
    public void StepTowards(double end)
    {
        while (true)
        {
            var width = Math.Min(step, end - Time);
            var (next, last, error) = Trial(State, Rates, width);
            if (error <= 1 || width <= Shortest)
            {
                // The last step before an end is cut short; that must not make the next one short.
                step = width < step ? step : width * Growth(error);
                PreviousTime = Time;
                Previous = State;
                PreviousRates = Rates;
                Time = width < end - Time ? Time + width : end;
                State = next;
                Rates = last;
                return;
            }

            step = Math.Max(Shortest, width * Growth(error));
        }
    }

    /// <summary>The state at a time within the last step, by a step of its own.</summary>
    public double[] Within(double time) =>
        time >= Time ? State
        : time <= PreviousTime ? Previous
        : Trial(Previous, PreviousRates, time - PreviousTime).Next;

    /// <summary>The time within the last step at which a measure has fallen to 0; null where it is still above it at the end.</summary>
    public double? Crossing(Func<double[], double> excess) =>
        excess(State) > 0 ? null
        : excess(Previous) <= 0 ? PreviousTime
        : Brent.FindRoot(time => excess(Within(time)), PreviousTime, Time, 1e-12, 200);

    private static double Growth(double error) => Math.Min(4, Math.Max(0.2, 0.9 * Math.Pow(error + 1e-10, -0.2)));

    private (double[] Next, double[] Rates, double Error) Trial(double[] from, double[] first, double width)
    {
        var slopes = new double[7][];
        slopes[0] = first;
        var next = from;
        for (var stage = 1; stage < 7; stage++)
        {
            next = Moved(from, slopes, A[stage - 1], width);
            slopes[stage] = rates(next);
        }

        double worst = 0;
        for (var i = 0; i < from.Length; i++)
        {
            double error = 0;
            for (var stage = 0; stage < 7; stage++)
            {
                error += Error[stage] * slopes[stage][i];
            }

            var allowed = absolute[i] + relative * Math.Max(Math.Abs(from[i]), Math.Abs(next[i]));
            worst = Math.Max(worst, Math.Abs(width * error) / allowed);
        }

        return (next, slopes[6], worst);
    }

    private static double[] Moved(double[] from, double[][] slopes, double[] weights, double width)
    {
        var moved = new double[from.Length];
        for (var i = 0; i < moved.Length; i++)
        {
            double sum = 0;
            for (var stage = 0; stage < weights.Length; stage++)
            {
                sum += weights[stage] * slopes[stage][i];
            }

            moved[i] = from[i] + width * sum;
        }

        return moved;
    }
}

namespace OilCondition.Statistics;

/// <summary>The sums of a series at slow rates, from its moments: one pass over the readings for all of them, without exponentials.</summary>
/// <remarks>
/// d = 1 − exp(−x) = −Σ (−x)^k/k! and d² = 1 − 2 exp(−x) + exp(−2x) = Σ (2^k − 2) (−x)^k/k! with x = κ τ, τ from 0 to 1, so that each sum is a power series in κ
/// whose coefficients are moments of τ. Up to <see cref="Fastest"/> the terms left out are below 1e-12 of the sum of d².
/// </remarks>
internal readonly ref struct DecaySlowSums
{
    /// <summary>The fastest rate times span.</summary>
    public const double Fastest = 0.25;

    /// <summary>Powers of τ: three times four.</summary>
    private const int Terms = 3 * LaneMath.Width;

    /// <summary>Doubles of scratch space.</summary>
    public const int Scratch = 3 * Terms;

    private readonly Span<double> ofDrop;
    private readonly Span<double> ofSquare;
    private readonly Span<double> ofProduct;

    /// <summary>The moments of a series.</summary>
    /// <param name="columns">The series.</param>
    /// <param name="scratch"><see cref="Scratch"/> doubles.</param>
    public DecaySlowSums(in DecayColumns columns, Span<double> scratch)
    {
        ofDrop = scratch.Slice(0, Terms);
        ofSquare = scratch.Slice(Terms, Terms);
        ofProduct = scratch.Slice(2 * Terms, Terms);
        Lanes p0 = default;
        Lanes p1 = default;
        Lanes p2 = default;
        Lanes r0 = default;
        Lanes r1 = default;
        Lanes r2 = default;
        for (var i = 0; i < columns.Count; i++)
        {
            var time = columns.Times[i];
            var square = time * time;
            var fourth = LaneMath.Of(square * square);
            var value = LaneMath.Of(columns.Values[i]);
            var power = LaneMath.Of(columns.Weights[i]) * LaneMath.Of(time, square, square * time, square * square);
            p0 += power;
            r0 = LaneMath.MultiplyAdd(power, value, r0);
            power *= fourth;
            p1 += power;
            r1 = LaneMath.MultiplyAdd(power, value, r1);
            power *= fourth;
            p2 += power;
            r2 = LaneMath.MultiplyAdd(power, value, r2);
        }

        LaneMath.Store(p0, ofDrop, 0);
        LaneMath.Store(p1, ofDrop, LaneMath.Width);
        LaneMath.Store(p2, ofDrop, 2 * LaneMath.Width);
        LaneMath.Store(r0, ofProduct, 0);
        LaneMath.Store(r1, ofProduct, LaneMath.Width);
        LaneMath.Store(r2, ofProduct, 2 * LaneMath.Width);
        double perFactorial = -1;
        double doubled = 1;
        for (var k = 0; k < Terms; k++)
        {
            perFactorial /= -(k + 1);
            doubled *= 2;
            ofDrop[k] *= perFactorial;
            ofProduct[k] *= perFactorial;
            ofSquare[k] = (2 - doubled) * ofDrop[k];
        }
    }

    /// <summary>The sums at four rates, one a lane; none faster than <see cref="Fastest"/>.</summary>
    /// <param name="scaledRates">The rates.</param>
    /// <param name="d">Sums of the drop.</param>
    /// <param name="dd">Sums of its square.</param>
    /// <param name="dy">Sums of its product with the value.</param>
    public void AtFourRates(Lanes scaledRates, out Lanes d, out Lanes dd, out Lanes dy)
    {
        Lanes p = default;
        Lanes q = default;
        Lanes r = default;
        for (var k = Terms - 1; k >= 0; k--)
        {
            p = LaneMath.MultiplyAdd(p, scaledRates, LaneMath.Of(ofDrop[k]));
            q = LaneMath.MultiplyAdd(q, scaledRates, LaneMath.Of(ofSquare[k]));
            r = LaneMath.MultiplyAdd(r, scaledRates, LaneMath.Of(ofProduct[k]));
        }

        d = p * scaledRates;
        dd = q * scaledRates;
        dy = r * scaledRates;
    }
}

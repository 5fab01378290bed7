using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>What an option costs at the plant's prices, over the cases of its band: use, hire for each day begun, mobilisation.</summary>
/// <remarks>Cost = hours × attendance + energy + elements + new oil + waste + hire × days begun + mobilisation.</remarks>
public sealed class OptionCost
{
    private readonly double[] costs;

    private OptionCost(double[] costs, string currency, IReadOnlyList<string> withoutPrice)
    {
        this.costs = costs;
        Currency = currency;
        WithoutPrice = withoutPrice;
    }

    /// <summary>The currency, as the station file writes it.</summary>
    public string Currency { get; }

    /// <summary>What is used and has no price: with any, the cost is too low.</summary>
    public IReadOnlyList<string> WithoutPrice { get; }

    /// <summary>Whether all that is used has a price.</summary>
    public bool IsComplete => WithoutPrice.Count == 0;

    /// <summary>Cost that only one case in ten stays below; null where it is not reached by then.</summary>
    public double? P10 => At(0.1);

    /// <summary>Cost in the middle; null where the target is not reached in half of the cases.</summary>
    public double? P50 => At(0.5);

    /// <summary>Cost that nine cases in ten stay below; null where the target is not reached in nine of ten.</summary>
    public double? P90 => At(0.9);

    /// <summary>Of the cases of a band, each bound for a time of its own.</summary>
    internal static OptionCost Of(
        TreatmentBand band,
        StationPrices prices,
        EquipmentTerms terms,
        Func<TimeSpan, TimeSpan> bound
    )
    {
        var missing = new SortedSet<string>(StringComparer.Ordinal);
        if (terms is { IsHired: true, DayRate: null })
        {
            missing.Add("hire");
        }

        if (terms is { IsHired: true, Mobilisation: null })
        {
            missing.Add("mobilisation");
        }

        double Cost(TreatmentAssessment row)
        {
            if (!row.MeetsTarget || !row.TryCostAt(prices.Prices, out var use))
            {
                return double.PositiveInfinity;
            }

            missing.UnionWith(use.Items.Where(item => item.Cost is null).Select(item => item.Name));
            var days = Math.Ceiling(bound(row.RunTime!.Value).TotalDays);
            return use.Total + (terms.IsHired ? days * (terms.DayRate ?? 0) + (terms.Mobilisation ?? 0) : 0);
        }

        double[] ordered = [.. band.Cases.Select(Cost).OrderBy(one => one)];
        return new OptionCost(ordered, prices.Currency, [.. missing]);
    }

    private double? At(double share) =>
        TreatmentBand.Quantile(costs, share) is var cost && Guard.IsFinite(cost) ? cost : null;

    /// <summary>The cost in a few words.</summary>
    /// <returns>For example <c>320 EUR (280 to 410)</c>.</returns>
    public override string ToString() => Sentences.English.Of(this);
}

using OilCondition.Reporting;

namespace OilCondition.Tests.Reporting;

/// <summary>Words that a plant puts in place of those shipped.</summary>
public class ReportTextsTests
{
    private static readonly IReadOnlyList<ConditionAssessment> Fleet = ReportPages.Fleet(6);

    [Fact]
    public void Words_are_replaced_one_by_one_and_the_language_is_said()
    {
        var texts = ReportTexts.Parse(
            """{ "language": "en-GB", "texts": { "first.normal-summary": "{count} quiet machines" } }""",
            Sentences.Parse("""{ "language": "en-GB", "texts": { "state.alarm": "red tag" } }""")
        );
        var page = ReportPages.Parsed(ConditionReport.ToHtml("Oil condition", Fleet, new ReportOptions(texts: texts)));

        ((string?)page.Attribute("lang")).ShouldBe("en-GB");
        page.ToString().ShouldContain("red tag");
        page.ToString().ShouldNotContain("</span> alarm<");
        page.ToString().ShouldContain("What to do");
    }

    [Fact]
    public void Faults_are_listed_together()
    {
        var fault = Should.Throw<FormatException>(() =>
            ReportTexts.Parse(
                """{ "language": "en", "texts": { "first.stat": "x", "next.overdue": "late", "code.met": "{code} {goal}" } }"""
            )
        );

        fault.Message.ShouldContain("3 faults");
        fault.Message.ShouldContain("'first.stat' is no key");
        fault.Message.ShouldContain("'next.overdue' has no places; expected are {date}");
        fault.Message.ShouldContain("'code.met' has {code}, {goal}; expected are {code}, {target}");
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{ \"texts\": {} }")]
    [InlineData("{ \"language\": \"en\" }")]
    [InlineData("{ \"language\": \"<b>\", \"texts\": {} }")]
    [InlineData("{ \"language\": \"en\", \"texts\": { \"first.state\": 1 } }")]
    [InlineData("{ \"language\": \"en\", \"texts\": { \"first.state\": null } }")]
    [InlineData("{ \"language\": \"en\", \"texts\": { \"first.state\": \"a\", \"first.state\": \"b\" } }")]
    public void What_is_no_such_document_is_refused(string json) =>
        Should
            .Throw<FormatException>(() => ReportTexts.Parse(json))
            .Message.ShouldStartWith("In the words of a report");

    [Fact]
    public void A_picture_needs_its_words_and_an_SVG_document()
    {
        Should.Throw<ArgumentException>(() => new ReportPicture("t", " ", "<svg/>")).ParamName.ShouldBe("description");
        Should.Throw<ArgumentException>(() => new ReportPicture("t", "d", "png")).ParamName.ShouldBe("svg");
        new ReportPicture("t", "d", "<svg/>").ToString().ShouldBe("t");
    }
}

using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Tests.Jobs;

namespace BoothWatch.Tests.Records;

/// <summary>Which air a record shows: from an hour before a coat to two hours after it.</summary>
public sealed class RecordSpanTests
{
    [Fact]
    public void Coats_CloseTogether_ShareASpanAndThoseOfAnotherDayDoNot()
    {
        Job job = Sample.Job(
            new CoatMarked(1, Sample.Coat(0, stopMinute: 6), null),
            new CoatMarked(2, Sample.Coat(30), null),
            new CoatMarked(3, Sample.Coat(24 * 60, stopMinute: (24 * 60) + 7), null));
        IReadOnlyList<RecordSpan> spans = RecordSpan.Of(job, Sample.Day.AddDays(9));
        Assert.Equal(
            [(-60.0, 160.0, 5.0), (1380, 1570, 5)],
            spans.Select(span => ((span.From - Sample.Day).TotalMinutes, (span.To - Sample.Day).TotalMinutes, span.Step.TotalMinutes)));
    }

    [Fact]
    public void Span_OfARecentCoat_EndsWithTheLastWholeStep()
    {
        Job job = Sample.Job(new CoatMarked(1, Sample.Coat(0, stopMinute: 6), null));
        Assert.Equal(Sample.Day.AddMinutes(15), RecordSpan.Of(job, Sample.Day.AddMinutes(19.9)).Single().To);
        Assert.Empty(RecordSpan.Of(job, Sample.Day.AddMinutes(-57)));
    }

    [Fact]
    public void Span_OfACoatThatNobodyStoppedForDays_HasLongSteps()
    {
        Job job = Sample.Job(new CoatMarked(1, Sample.Coat(0, stopMinute: 10 * 24 * 60), null));
        RecordSpan span = RecordSpan.Of(job, Sample.Day.AddDays(30)).Single();
        Assert.InRange((span.To - span.From) / span.Step, 1, 242);
        Assert.Equal(0, span.From.UtcTicks % span.Step.Ticks);
    }
}

using BoothWatch.Service.Outputs.Influx;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>A database in memory: a line written again replaces itself; it answers as the test says.</summary>
internal sealed class ListWriter : IPointWriter
{
    public Dictionary<string, int> Stored { get; } = [];

    public List<int> Requests { get; } = [];

    /// <summary>The answer to a request; accepted unless a test says otherwise.</summary>
    public Func<IReadOnlyList<string>, WriteAnswer> Answer { get; set; } = _ => WriteAnswer.Accepted;

    public Task<WriteAnswer> WriteAsync(IReadOnlyList<string> lines, CancellationToken cancellationToken)
    {
        Requests.Add(lines.Count);
        WriteAnswer answer = Answer(lines);
        if (answer.Kind == WriteAnswerKind.Accepted)
        {
            foreach (string line in lines)
            {
                Stored[line] = Stored.GetValueOrDefault(line) + 1;
            }
        }

        return Task.FromResult(answer);
    }
}

namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// One rule of the verdict. It looks at the evidence and gives the reasons it has, none when it is content.
/// A rule keeps no state and never throws; what it does not know, it answers with wait.
/// </summary>
public interface IRule
{
    /// <summary>Stable name, kebab-case; the reasons of the rule carry it.</summary>
    string Name { get; }

    /// <summary>The reasons of this rule, in any order.</summary>
    IEnumerable<Reason> Judge(Evidence evidence);
}

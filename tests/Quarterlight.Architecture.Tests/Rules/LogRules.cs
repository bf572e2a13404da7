using System.Reflection;
using Microsoft.Extensions.Logging;

namespace Quarterlight.Architecture.Tests.Rules;

/// <summary>A project keeps all its log lines in one class, and no event number is used twice in the house.</summary>
internal static class LogRules
{
    /// <summary>A line that can be logged.</summary>
    public sealed record LogLine(string Assembly, string Class, int EventId);

    /// <summary>The lines that types declare.</summary>
    public static IReadOnlyList<LogLine> LinesOf(IEnumerable<Type> types) =>
    [
        .. from type in types
           from method in type.GetMethods(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly)
           let line = method.GetCustomAttribute<LoggerMessageAttribute>()
           where line is not null
           select new LogLine(type.Assembly.GetName().Name!, type.FullName!, line.EventId),
    ];

    /// <summary>Projects with more than one log class, and numbers used twice.</summary>
    public static IReadOnlyList<string> Offences(IReadOnlyList<LogLine> lines) =>
    [
        .. lines.GroupBy(l => l.Assembly).Select(g => (g.Key, Classes: g.Select(l => l.Class).Distinct().Order().ToArray()))
            .Where(g => g.Classes.Length > 1)
            .Select(g => $"{g.Key} logs from {string.Join(" and ", g.Classes)}"),
        .. lines.Where(l => !l.Class.EndsWith("Log", StringComparison.Ordinal)).Select(l => $"{l.Class} logs but is not named ...Log").Distinct(),
        .. lines.GroupBy(l => l.EventId).Where(g => g.Count() > 1).Select(g => $"event {g.Key} is used {g.Count()} times"),
    ];
}

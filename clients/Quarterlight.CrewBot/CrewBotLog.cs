using Microsoft.Extensions.Logging;
using Quarterlight.Crew;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot;

/// <summary>Every line this process logs. None holds content, names or tokens.</summary>
internal static partial class CrewBotLog
{
    [LoggerMessage(2001, LogLevel.Information, "{What} in {Team} by {User}: {End}, {Intent}, first answer after {FirstMilliseconds:0} ms, end after {TotalMilliseconds:0} ms, planner {PlannerMilliseconds:0} ms")]
    public static partial void Interaction(ILogger log, string what, string team, string user, InteractionEnd end, CrewIntent intent, double firstMilliseconds, double totalMilliseconds, double plannerMilliseconds);

    [LoggerMessage(2002, LogLevel.Error, "An answer failed with {Kind}, reference {Reference}{Trace}")]
    public static partial void DeskFailed(ILogger log, string kind, string reference, string trace);

    [LoggerMessage(2003, LogLevel.Warning, "The platform refused a message: {Fault}, code {Code}")]
    public static partial void NotShown(ILogger log, DiscordFault fault, int? code);

    [LoggerMessage(2004, LogLevel.Warning, "An answer could not be delivered: {Fault}, code {Code}")]
    public static partial void NotDelivered(ILogger log, DiscordFault fault, int? code);

    [LoggerMessage(2005, LogLevel.Warning, "The note of an open answer could not be written: {Kind}. Check the data folder")]
    public static partial void LedgerNotWritten(ILogger log, string kind);

    [LoggerMessage(2006, LogLevel.Error, "The form of {What} could not be opened; put off before: {Deferred}")]
    public static partial void FormNotOpened(ILogger log, string what, bool deferred);

    [LoggerMessage(2007, LogLevel.Information, "{Count} answers were open when the process before ended; {Told} of the askers were told")]
    public static partial void Recovered(ILogger log, int count, int told);

    [LoggerMessage(2008, LogLevel.Information, "Commands registered: {Count}; changed: {Changed}")]
    public static partial void Registered(ILogger log, int count, bool changed);

    [LoggerMessage(2009, LogLevel.Warning, "Commands could not be registered: {Fault}, code {Code}; trying again in {Seconds:0} s")]
    public static partial void NotRegistered(ILogger log, DiscordFault fault, int? code, double seconds);

    [LoggerMessage(2010, LogLevel.Information, "Stopping: {Count} answers under way")]
    public static partial void Stopping(ILogger log, int count);

    [LoggerMessage(2011, LogLevel.Warning, "{Count} answers were not finished and are left for the next start")]
    public static partial void LeftOpen(ILogger log, int count);

    [LoggerMessage(2012, LogLevel.Error, "Taking an interaction failed with {Kind}, reference {Reference}{Trace}")]
    public static partial void TransportFailed(ILogger log, string kind, string reference, string trace);

    [LoggerMessage(2013, LogLevel.Information, "Serving on Discord; planner {Planner}")]
    public static partial void Serving(ILogger log, string planner);

    [LoggerMessage(2014, LogLevel.Warning, "The file {Variable} names can be read by others; make it readable by its owner alone (mode 0600)")]
    public static partial void SecretReadable(ILogger log, string variable);
}

#!/usr/bin/env perl
# The rooms of src and who may include whom, from the sources themselves. Prints a line a violation, or with --list the
# rooms with what each folder includes.
# Usage: rooms.pl [--list]      in the repository's folder. Exit status: 0 none, 1 some.
use strict;
use warnings;

# From the lowest room up. Folders of a room stand in order too: a later one may include an earlier one, except in rooms
# of siblings, which do not include each other.
my @rooms = (
    [base     => qw(source diagnose quantity)],
    [language => qw(syntax check plan library)],
    [judge    => qw(evidence evaluate explain audit assess)],
    [apply    => qw(review proof archive window contrast followup sweep asks)],
    [show     => qw(picture report)],
    [doors    => qw(session c command)],
);
my %siblings = (apply => 1);

my (%place, %folders);
for my $at (0 .. $#rooms) {
    my ($room, @list) = @{$rooms[$at]};
    $place{"$room/$list[$_]"} = [$at, $_, $room] for 0 .. $#list;
    $folders{$room} = \@list;
}
# What stands in grammar/ is the syntax folder's; public headers stand over every room.
my $grammar = $place{'language/syntax'};
my $list = @ARGV && $ARGV[0] eq '--list';
my ($violations, %seen) = (0);

sub violation { print "layout: @_\n" unless $list; $violations++; }

sub folder_of {
    my ($path) = @_;
    return $path =~ m{^([^/]+/[^/]+)/} && $place{$1} ? $1 : undef;
}

sub may {
    my ($own, $other) = @_;
    return $own->[0] > $other->[0] if $own->[0] != $other->[0];
    return $own->[1] == $other->[1] if $siblings{$own->[2]};
    return $own->[1] >= $other->[1];
}

sub check_file {
    my ($file) = @_;
    my $inside = $file =~ s{^src/}{}r;
    my $folder = $file =~ m{^grammar/} ? 'language/syntax' : folder_of($inside);
    my $public = $file =~ m{^src/plumbrule/};
    my $own = $folder ? $place{$folder} : undef;
    my ($dir) = $file =~ m{^(.*)/};
    open my $in, '<', $file or die "$file: $!";
    while (my $line = <$in>) {
        next unless $line =~ /^\s*#\s*include\s*"([^"]*)"/;
        my $included = $1;
        if ($included =~ m{^plumbrule/}) {
            violation("$file:$.: $included is for those who use the library from outside")
                unless $public || ($folder && $folder =~ m{^doors/(session|c)$});
            violation("$file:$.: includes \"$included\", which is not there") unless -f "src/$included";
        } elsif (my $other = folder_of($included)) {
            $seen{$folder // 'src'}{$other}++ if ($folder // '') ne $other;
            if (!-f "src/$included") {
                violation("$file:$.: includes \"$included\", which is not there");
            } elsif ($public) {
                violation("$file:$.: a public header includes \"$included\", which is not installed");
            } elsif ($own && !may($own, $place{$other})) {
                my $why = $own->[0] == $place{$other}[0] && $siblings{$own->[2]} ? 'a sibling' : 'which stands above it';
                violation("$file:$.: $folder includes $other, $why");
            }
        } elsif ($included =~ m{^grammar/}) {
            violation("$file:$.: includes \"$included\", which is not there") unless -f $included;
            violation("$file:$.: $folder includes grammar, which only language/syntax may")
                if $folder && $folder ne 'language/syntax' && $included !~ m{^grammar/words\.hpp$};
        } elsif (!-f "$dir/$included" && $included ne 'report_templates.hpp') {
            violation("$file:$.: includes \"$included\", which is in no room and not in grammar/");
        }
    }
}

for my $folder (sort grep { -d } glob 'src/*/*') {
    my $inside = $folder =~ s{^src/}{}r;
    violation("$folder: not a folder of the house") unless $place{$inside} || $inside =~ m{^plumbrule/};
}
for my $room (sort grep { -d } glob 'src/*') {
    my $name = $room =~ s{^src/}{}r;
    violation("$room: not a room (rooms: " . join(' ', map { $_->[0] } @rooms) . ')')
        unless $folders{$name} || $name =~ m{^(plumbrule|package)$};
}
check_file($_) for sort split /\n/, `find src grammar -type f \\( -name '*.cpp' -o -name '*.hpp' -o -name '*.h' \\) 2>/dev/null`;

if ($list) {
    for my $room (reverse @rooms) {
        my ($name, @inside) = @$room;
        for my $folder (@inside) {
            next unless -d "src/$name/$folder";
            printf "%-18s <- %s\n", "$name/$folder", join(' ', sort keys %{$seen{"$name/$folder"} || {}});
        }
        print "\n";
    }
}
exit($violations ? 1 : 0);
